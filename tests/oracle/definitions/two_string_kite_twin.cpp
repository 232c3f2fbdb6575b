// SPDX-License-Identifier: Apache-2.0
// Two places of a digit in one box; one has a single companion in its row, the other a single one in its column, both
// companions outside the box. What sees both companions falls.
#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

Conclusions two_string_kite_twin(const Position& position) {
  Conclusions found;
  for (const Digit digit : all_digits(position)) {
    for (const House box : houses_of_kind(position, HouseKind::kBox)) {
      const std::set<Cell> inside = places_of(position, box, {digit});
      for (const Cell one : inside) {
        for (const Cell other : inside) {
          const std::set<Cell> row = minus(places_of(position, position.shape().houses_of(one)[0], {digit}), {one});
          const std::set<Cell> column = minus(places_of(position, position.shape().houses_of(other)[1], {digit}), {other});
          if (one == other || row.size() != 1 || column.size() != 1) continue;
          if (inside.contains(*row.begin()) || inside.contains(*column.begin())) continue;
          note_once(found, seen_from_both(position, digit, *row.begin(), *column.begin()));
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
