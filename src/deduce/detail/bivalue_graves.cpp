// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/bivalue_graves.h"

#include "deduce/detail/guard.h"

namespace cp::deduce {

CellSet cells_with_three(const Position& position) {
  CellSet found;
  for (const Cell cell : position.open()) {
    const int size = position.candidates(cell).size();
    if (size == 2) continue;
    if (size != 3) return {};
    found.add(cell);
  }
  return found;
}

bool is_grave_without(std::string_view technique, const Position& position, const std::vector<Candidate>& extras) {
  const Shape& shape = position.shape();
  const int houses = is_weakened(technique, Guard::kSound) ? 0 : shape.house_count();
  for (int i = 0; i < houses; ++i) {
    for (const Digit digit : shape.digits()) {
      CellSet places = position.places(House(i), digit);
      for (const Candidate& extra : extras) {
        if (extra.digit == digit) places.remove(extra.cell);
      }
      if (!places.is_empty() && places.size() != 2) return false;
    }
  }
  return true;
}

DeadlyPattern grave_without(const Position& position, const std::vector<Candidate>& extras) {
  DeadlyPattern pattern;
  for (const Cell cell : position.open()) {
    pattern.cells.push_back(cell);
    pattern.digits.push_back(position.candidates(cell));
    for (const Candidate& extra : extras) {
      if (extra.cell == cell) pattern.digits.back().remove(extra.digit);
    }
  }
  return pattern;
}

}  // namespace cp::deduce
