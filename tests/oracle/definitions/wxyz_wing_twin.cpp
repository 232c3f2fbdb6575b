// SPDX-License-Identifier: Apache-2.0
// Four cells, four digits, all but one of the digits in one house each; no k of the cells with only k digits.
#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

Conclusions wxyz_wing_twin(const Position& position) {
  Conclusions found;
  for (const std::set<Digit>& digits : choices(all_digits(position), 4)) {
    std::set<Cell> cells;
    for (const Cell cell : position.open()) {
      if (minus(digits_in(position, {cell}), digits).empty()) cells.insert(cell);
    }
    for (const std::set<Cell>& four : choices(cells, 4)) {
      if (digits_in(position, four) != digits) continue;
      std::set<Digit> loose;
      for (const Digit digit : digits) {
        if (!are_in_one_house(position, holders(position, four, digit))) loose.insert(digit);
      }
      if (loose.size() != 1 || has_locked_part(position, four)) continue;
      note_new(found, plain_seeing_all(position, holders(position, four, *loose.begin()), *loose.begin()));
    }
  }
  return found;
}

}  // namespace cp::oracle
