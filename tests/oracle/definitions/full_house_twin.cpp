// SPDX-License-Identifier: Apache-2.0
// A house in which all cells but one are filled: the digit that is not among them goes there. Each cell once.
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions full_house_twin(const Position& position) {
  Conclusions found;
  for (const House house : all_houses(position)) {
    std::set<Digit> missing = all_digits(position);
    for (const Cell cell : position.shape().cells(house)) {
      if (position.is_placed(cell)) missing.erase(*position.digit_at(cell));
    }
    const std::set<Cell> open = open_cells(position, house);
    if (open.size() != 1 || missing.size() != 1 || !position.has({*open.begin(), *missing.begin()})) continue;
    const Conclusion filled{{{*open.begin(), *missing.begin()}}, {}};
    if (!found.contains(filled)) found.insert(filled);
  }
  return found;
}

}  // namespace cp::oracle
