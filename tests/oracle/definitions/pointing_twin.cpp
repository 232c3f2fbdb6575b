// SPDX-License-Identifier: Apache-2.0
// All places of a digit in a box, two or more, are in one line: it leaves the rest of the line.
#include <algorithm>

#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions pointing_twin(const Position& position) {
  Conclusions found;
  for (const House box : houses_of_kind(position, HouseKind::kBox)) {
    for (const House line : all_houses(position)) {
      if (position.shape().kind(line) == HouseKind::kBox) continue;
      for (const Digit digit : all_digits(position)) {
        const std::set<Cell> in_box = places_of(position, box, {digit});
        const std::set<Cell> in_line = places_of(position, line, {digit});
        const bool locked = in_box.size() >= 2 && std::includes(in_line.begin(), in_line.end(), in_box.begin(), in_box.end());
        if (locked) note_struck(found, candidates_there(position, minus(in_line, in_box), {digit}));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
