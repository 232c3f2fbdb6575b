// SPDX-License-Identifier: Apache-2.0
// Three cells of two candidates, xy, xz and yz; the first sees the others. z leaves what sees the others.
#include "oracle/definitions/plain_sight.h"

namespace cp::oracle {

Conclusions xy_wing_twin(const Position& position) {
  Conclusions found;
  const std::set<Cell> pairs = cells_with_count(position, 2);
  for (const Cell pivot : pairs) {
    for (const Cell one : pairs) {
      for (const Cell other : pairs) {
        if (!cells_see(position, pivot, one) || !cells_see(position, pivot, other) || one == other) continue;
        const std::set<Digit> outside = minus(digits_in(position, {one, other}), digits_in(position, {pivot}));
        if (digits_in(position, {pivot, one, other}).size() != 3 || outside.size() != 1) continue;
        const std::set<Candidate> ends = candidates_there(position, {one, other}, outside);
        if (ends.size() != 2 || digits_in(position, {one, other}).size() != 3) continue;
        note_as_new(found, excluded_by_all(position, ends));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
