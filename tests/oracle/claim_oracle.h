// SPDX-License-Identifier: Apache-2.0
// A second opinion on claims: its own kind of sentence, its own meaning, its own formula for CaDiCaL. It prints its sentences in
// the language of docs/formats/claim.md; nothing but that text is shared with src/claim.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "grid/position.h"

namespace CaDiCaL {
class Solver;
}

namespace cp::oracle {

struct Saying {
  enum class What { kIs, kIsNot, kIn, kNotIn, kEqual, kDifferent, kHold, kSurplus, kExactly, kAtLeast, kAtMost, kIf, kAnd, kOr, kNot };

  What what = What::kIs;
  std::vector<int> cells;   // indices; with repetitions in kHold and kSurplus
  std::vector<int> others;  // the right side of kEqual, kDifferent, kSurplus
  std::vector<int> digits;  // from 1; with repetitions in kHold and kSurplus (there: what the left has more)
  int number = 0;           // of the counts
  std::vector<Saying> parts;
};

std::string text_of(const Saying& saying, int side);
// `grid`: the digits (from 1) of all cells.
bool is_so(const Saying& saying, const std::vector<int>& grid);

// What the grids in question keep to.
struct Rules {
  std::vector<int> houses;      // indices as in House
  bool marks = true;            // the candidates of the position; otherwise only its placed digits
  std::vector<Saying> granted;  // sentences taken for true
};

class ClaimOracle {
 public:
  ClaimOracle(const Position& position, const Rules& rules);
  virtual ~ClaimOracle();

  // Is there a grid that keeps to the rules and in which the sentence is so (or is not)?
  bool can_be(const Saying& saying, bool so);
  bool can_be_anything();

 protected:
  // Only the rule that a cell holds exactly one digit.
  explicit ClaimOracle(const Shape& shape);
  void exactly_one(const std::vector<int>& literals, int unless = 0);
  [[nodiscard]] int literal(int cell, int digit) const { return cell * side_ + digit; }
  void clause(const std::vector<int>& literals);
  int fresh() { return next_++; }
  // A literal that is true exactly when the sentence is so.
  int meaning(const Saying& saying);
  [[nodiscard]] CaDiCaL::Solver& solver() { return *solver_; }

 private:
  int all_of(const std::vector<int>& literals);
  int any_of(const std::vector<int>& literals);
  // counts[k] says: at least k of them, for k from 0 to their number.
  std::vector<int> counts(const std::vector<int>& literals);
  int in_set(const Saying& saying, bool inside);
  int same_copies(const Saying& saying);
  int count_between(const Saying& saying);

  int side_;
  int next_;
  int truth_;
  std::unique_ptr<CaDiCaL::Solver> solver_;
};

}  // namespace cp::oracle
