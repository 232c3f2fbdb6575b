// SPDX-License-Identifier: Apache-2.0
// A candidate outside a box, in line with it, and a strong link along a line that misses the box: the link's far place sees the candidate.
// What the candidate leaves of the box lies in the other direction, in the line of the link's near place.
#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

Conclusions empty_rectangle_twin(const Position& position) {
  Conclusions found;
  for (const Digit digit : all_digits(position)) {
    for (const House box : houses_of_kind(position, HouseKind::kBox)) {
      const std::set<Cell> inside = places_of(position, box, {digit});
      for (const Cell target : minus(places_in_grid(position, digit), inside)) {
        for (const std::size_t along : {0U, 1U}) {  // the arm that the target sees, and the link, are rows or columns
          const auto line = [&](Cell cell, std::size_t way) { return position.shape().houses_of(cell)[way]; };
          const std::set<Cell> left = minus(inside, places_of(position, line(target, along), {digit}));
          for (const Cell far : minus(places_of(position, line(target, 1 - along), {digit}), {target})) {
            const std::set<Cell> link = places_of(position, line(far, along), {digit});
            if (link.size() != 2 || left.empty() || left.size() == inside.size()) continue;
            const Cell near = *minus(link, {far}).begin();
            const std::set<Cell> arm = places_of(position, line(near, 1 - along), {digit});
            bool fits = minus(left, arm).empty() && !minus(inside, arm).empty();
            for (const Cell cell : position.shape().cells(box)) fits = fits && line(cell, along) != line(far, along);
            if (fits) note_once(found, {{target, digit}});
          }
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
