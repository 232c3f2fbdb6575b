// SPDX-License-Identifier: Apache-2.0
// Many patterns of one kind may strike out the same candidates; a technique that is defined by what it concludes
// reports each set once. Also the candidates of one digit that a set of cells has, as a step lists them.
#pragma once

#include <set>
#include <utility>
#include <vector>

#include "grid/position.h"

namespace cp::deduce {

class StruckOnce {
 public:
  // True for a set that is not empty and was not asked for before. The candidates are ordered.
  bool is_new(const std::vector<Candidate>& struck) { return !struck.empty() && seen_.insert(struck).second; }

 private:
  std::set<std::vector<Candidate>> seen_;
};

inline std::vector<Candidate> candidates_of(const CellSet& cells, Digit digit) {
  std::vector<Candidate> found;
  for (const Cell cell : cells) found.push_back({cell, digit});
  return found;
}

// The open cells with exactly so many candidates.
inline CellSet cells_with(const Position& position, int candidates) {
  CellSet cells;
  for (const Cell cell : position.open()) {
    if (position.candidates(cell).size() == candidates) cells.add(cell);
  }
  return cells;
}

}  // namespace cp::deduce
