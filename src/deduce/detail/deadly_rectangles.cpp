// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/deadly_rectangles.h"

namespace cp::deduce {

DeadlyPattern pattern_of(const CellSet& cells, DigitSet digits) {
  DeadlyPattern pattern;
  for (const Cell cell : cells) {
    pattern.cells.push_back(cell);
    pattern.digits.push_back(digits);
  }
  return pattern;
}

std::vector<Candidate> candidates_of(const Position& position, const CellSet& cells, DigitSet digits) {
  std::vector<Candidate> found;
  for (const Cell cell : cells - position.placed()) {
    for (const Digit digit : position.candidates(cell) & digits) found.push_back({cell, digit});
  }
  return found;
}

std::vector<House> shared_houses(const Shape& shape, Cell one, Cell other) {
  std::vector<House> shared;
  for (const House house : shape.houses_of(one)) {
    if (shape.cells(house).has(other)) shared.push_back(house);
  }
  return shared;
}

bool OnceEach::take(Step step) {
  if (step.eliminations.empty() || !seen_.insert(step.eliminations).second) return true;
  return sink_.take(std::move(step));
}

}  // namespace cp::deduce
