// SPDX-License-Identifier: Apache-2.0
// The strong links of one digit, and the step that every one-digit chain ends in. Used by the one-digit chains and by
// the colourings.
#pragma once

#include <set>
#include <string_view>
#include <vector>

#include "deduce/detail/arguments.h"
#include "grid/position.h"

namespace cp::deduce {

// A house in which the digit has exactly two places: if it is not in one, it is in the other.
struct StrongLink {
  House house;
  Cell first;   // first < second
  Cell second;

  [[nodiscard]] Cell other(Cell end) const { return end == first ? second : first; }
};

// The strong links of the digit: boxes, rows, columns. Two cells may be linked in two houses.
std::vector<StrongLink> strong_links(const Position& position, Digit digit);

// The cells of `from` that see at least one cell of `cells`.
CellSet seen_by_any(const Shape& shape, const CellSet& cells, const CellSet& from);

// Which sets of candidates one call has struck out already: the same conclusion is reported once.
class ReportedOnce {
 public:
  // True the first time; false for a set that was there, or an empty one.
  bool is_new(const std::vector<Candidate>& eliminations) { return !eliminations.empty() && seen_.insert(eliminations).second; }

 private:
  std::set<std::vector<Candidate>> seen_;
};

// A chain of one digit has shown that it is in at least one of two cells; `houses` holds the strong links from one end
// to the other. Reports that the digit leaves every cell that sees both. False when the sink asked to stop.
bool report_ends(std::string_view technique, const Position& position, Digit digit, Cell one_end, Cell other_end, const std::vector<House>& houses,
                 ReportedOnce& reported, StepSink& sink);

}  // namespace cp::deduce
