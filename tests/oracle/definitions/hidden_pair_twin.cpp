// SPDX-License-Identifier: Apache-2.0
// Two digits with the same two places in a house: everything else leaves those two cells.
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions hidden_pair_twin(const Position& position) {
  Conclusions found;
  const std::set<Digit> digits = all_digits(position);
  for (const House house : all_houses(position)) {
    for (const Digit one : digits) {
      for (const Digit other : digits) {
        const std::set<Cell> cells = places_of(position, house, {one});
        if (!(one < other) || cells.size() != 2 || places_of(position, house, {other}) != cells) continue;
        note_struck(found, candidates_there(position, cells, minus(digits, {one, other})));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
