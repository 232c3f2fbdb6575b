// SPDX-License-Identifier: Apache-2.0
// Two open cells of a house with the same two candidates: both leave the rest of the house.
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions naked_pair_twin(const Position& position) {
  Conclusions found;
  for (const House house : all_houses(position)) {
    const std::set<Cell> open = open_cells(position, house);
    for (const Cell one : open) {
      for (const Cell other : open) {
        const std::set<Digit> digits = digits_in(position, {one});
        if (!(one < other) || digits.size() != 2 || digits_in(position, {other}) != digits) continue;
        note_struck(found, candidates_there(position, minus(open, {one, other}), digits));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
