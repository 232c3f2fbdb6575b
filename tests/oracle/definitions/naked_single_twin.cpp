// SPDX-License-Identifier: Apache-2.0
// An open cell with exactly one candidate holds it.
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions naked_single_twin(const Position& position) {
  Conclusions found;
  for (const House row : houses_of_kind(position, HouseKind::kRow)) {
    for (const Cell cell : open_cells(position, row)) {
      const std::set<Digit> digits = digits_in(position, {cell});
      if (digits.size() == 1) found.insert({{{cell, *digits.begin()}}, {}});
    }
  }
  return found;
}

}  // namespace cp::oracle
