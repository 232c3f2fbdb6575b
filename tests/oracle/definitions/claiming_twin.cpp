// SPDX-License-Identifier: Apache-2.0
// All places of a digit in a line, two or more, are in one box: it leaves the rest of the box.
#include <algorithm>

#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions claiming_twin(const Position& position) {
  Conclusions found;
  for (const House box : houses_of_kind(position, HouseKind::kBox)) {
    for (const House line : all_houses(position)) {
      if (position.shape().kind(line) == HouseKind::kBox) continue;
      for (const Digit digit : all_digits(position)) {
        const std::set<Cell> in_box = places_of(position, box, {digit});
        const std::set<Cell> in_line = places_of(position, line, {digit});
        const bool locked = in_line.size() >= 2 && std::includes(in_box.begin(), in_box.end(), in_line.begin(), in_line.end());
        if (locked) note_struck(found, candidates_there(position, minus(in_box, in_line), {digit}));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
