// SPDX-License-Identifier: Apache-2.0
// Four places of a digit: foot and roof are all that their line has, other foot and other roof all that a parallel line
// has; the feet stand in one crossing line, the roofs do not. What sees both roofs falls.
#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

Conclusions skyscraper_twin(const Position& position) {
  Conclusions found;
  for (const Digit digit : all_digits(position)) {
    for (const std::size_t along : {0U, 1U}) {  // the lines are rows, or columns
      const auto line = [&](Cell cell) { return position.shape().houses_of(cell)[along]; };
      const auto crossing = [&](Cell cell) { return position.shape().houses_of(cell)[1 - along]; };
      for (const Cell foot : places_in_grid(position, digit)) {
        for (const Cell other_foot : places_of(position, crossing(foot), {digit})) {
          const std::set<Cell> roofs = minus(places_of(position, line(foot), {digit}), {foot});
          const std::set<Cell> other_roofs = minus(places_of(position, line(other_foot), {digit}), {other_foot});
          if (foot == other_foot || roofs.size() != 1 || other_roofs.size() != 1) continue;
          if (crossing(*roofs.begin()) == crossing(*other_roofs.begin())) continue;
          note_once(found, seen_from_both(position, digit, *roofs.begin(), *other_roofs.begin()));
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
