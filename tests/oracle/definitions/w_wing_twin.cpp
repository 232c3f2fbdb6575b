// SPDX-License-Identifier: Apache-2.0
// Two cells with xz that do not see each other, and a house with exactly two places for x, other cells, one seen by the
// first, the other by the second. z leaves what sees both cells.
#include "oracle/definitions/plain_sight.h"

namespace cp::oracle {

Conclusions w_wing_twin(const Position& position) {
  Conclusions found;
  for (const Cell one : cells_with_count(position, 2)) {
    for (const Cell other : cells_with_count(position, 2)) {
      if (one == other || cells_see(position, one, other) || digits_in(position, {one}) != digits_in(position, {other})) continue;
      for (const Digit linked : digits_in(position, {one})) {
        const std::set<Digit> shared = minus(digits_in(position, {one}), {linked});
        for (const House house : all_houses(position)) {
          const std::set<Cell> places = places_of(position, house, {linked});
          if (places.size() != 2 || places.contains(one) || places.contains(other)) continue;
          const Cell low = *places.begin();
          const Cell high = *places.rbegin();
          const bool straight = cells_see(position, low, one) && cells_see(position, high, other);
          const bool crossed = cells_see(position, low, other) && cells_see(position, high, one);
          if (straight || crossed) note_as_new(found, excluded_by_all(position, candidates_there(position, {one, other}, shared)));
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
