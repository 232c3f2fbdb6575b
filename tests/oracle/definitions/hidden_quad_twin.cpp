// SPDX-License-Identifier: Apache-2.0
// Four digits with four places between them in a house, no part of them tight: all else leaves those cells.
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions hidden_quad_twin(const Position& position) {
  Conclusions found;
  for (const House house : all_houses(position)) {
    const std::set<Digit> missing = digits_in(position, open_cells(position, house));
    for (const std::set<Digit>& digits : choices(missing, 4)) {
      const std::set<Cell> cells = places_of(position, house, digits);
      if (cells.size() != 4) continue;
      bool has_smaller = false;
      for (std::size_t size = 1; size < 4; ++size) {
        for (const auto& part : choices(digits, size)) has_smaller = has_smaller || places_of(position, house, part).size() <= size;
      }
      if (!has_smaller) note_struck(found, candidates_there(position, cells, minus(missing, digits)));
    }
  }
  return found;
}

}  // namespace cp::oracle
