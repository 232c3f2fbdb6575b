// SPDX-License-Identifier: Apache-2.0
// Which candidates are true in at least one solution? The rest are what any sound technique may strike out.
#pragma once

#include <cstdint>

#include "exact/solve.h"

namespace cp {

// Every candidate of the position is in exactly one of the three groups. The groups are given by cell.
struct Backbone {
  std::array<DigitSet, kMaxCells> possible{};  // in some solution
  std::array<DigitSet, kMaxCells> never{};     // in no solution
  std::array<DigitSet, kMaxCells> unknown{};   // not settled within the limit; empty when is_complete
  bool has_solution = false;                   // some solution was found
  bool is_complete = true;                     // false: the limit on nodes was reached
  std::uint64_t nodes = 0;

  [[nodiscard]] bool is_possible(Candidate candidate) const { return possible[candidate.cell.index].has(candidate.digit); }
  [[nodiscard]] bool is_never(Candidate candidate) const { return never[candidate.cell.index].has(candidate.digit); }
  // In every solution (and there is one): the only possible digit of a cell without unknowns.
  [[nodiscard]] bool is_always(Candidate candidate) const {
    return possible[candidate.cell.index] == DigitSet::of(candidate.digit) && unknown[candidate.cell.index].is_empty();
  }
};

// First a handful of solutions; when they are all there are, they settle everything. Otherwise one search for every
// candidate not seen in a solution yet; each solution found settles all its candidates, each failure strikes one out
// for the searches that follow. `node_limit` bounds the nodes of all searches together.
Backbone find_backbone(const Position& position, std::uint64_t node_limit = kNoLimit);

}  // namespace cp
