// SPDX-License-Identifier: Apache-2.0
// A second opinion on level 5 of a balance: the fillings of its open cells as a formula for CaDiCaL.
// Written from the definition alone (docs/formats/step.md): it adds the houses up again from the weights.
#pragma once

#include <memory>
#include <vector>

#include "grid/position.h"
#include "step/balance_reason.h"

namespace CaDiCaL {
class Solver;
}

namespace cp::oracle {

class FillingOracle {
 public:
  FillingOracle(const Position& position, const std::vector<Weight>& weights);
  ~FillingOracle();

  [[nodiscard]] const CellSet& cells() const { return cells_; }
  // Is there a filling at all?
  bool has_filling();
  // Is there a filling that goes with the candidate?
  bool goes_with(Candidate candidate);

 private:
  [[nodiscard]] int literal(Cell cell, Digit digit) const { return cell.index * kMaxSide + digit.index + 1; }
  void clause(const std::vector<int>& literals);
  void at_most(const std::vector<int>& literals, int most);
  void add_rules();
  void add_tally(Digit digit, int tally);

  const Position& position_;
  CellSet cells_;
  std::array<int, kMaxCells> units_{};
  int next_variable_ = kMaxCells * kMaxSide + 1;
  std::unique_ptr<CaDiCaL::Solver> solver_;
};

}  // namespace cp::oracle
