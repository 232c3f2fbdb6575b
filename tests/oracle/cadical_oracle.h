// SPDX-License-Identifier: Apache-2.0
// A second opinion on exact questions from CaDiCaL (A. Biere and others), a general-purpose SAT solver.
// Encoding: one variable a candidate; each cell holds a digit and no two; each digit has a place in each house and no
// two ("extended encoding" of I. Lynce and J. Ouaknine, "Sudoku as a SAT problem", 2006). Candidates struck out are false.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "grid/position.h"

namespace CaDiCaL {
class Solver;
}

namespace cp::oracle {

// The digits of a grid in reading order.
using PlainGrid = std::vector<Digit>;

class CadicalOracle {
 public:
  explicit CadicalOracle(const Position& position);
  ~CadicalOracle();

  // A grid that fits the position and has not been blocked.
  std::optional<PlainGrid> find();
  // Is the candidate in such a grid?
  bool is_possible(Candidate candidate);
  // Shuts out this one grid from all later answers.
  void block(const PlainGrid& grid);
  // Counts grids up to the limit. What it blocks on the way is released afterwards.
  std::uint64_t count(std::uint64_t limit);

 private:
  [[nodiscard]] int literal(Cell cell, Digit digit) const { return cell.index * side_ + digit.index + 1; }
  void exactly_one(const std::vector<int>& literals);
  void encode(const Position& position);
  [[nodiscard]] PlainGrid model();
  // One clause against the grid, with one more literal in front when it is not 0.
  void forbid(const PlainGrid& grid, int unless);

  int side_;
  int cells_;
  int next_free_variable_;
  std::unique_ptr<CaDiCaL::Solver> solver_;
};

}  // namespace cp::oracle
