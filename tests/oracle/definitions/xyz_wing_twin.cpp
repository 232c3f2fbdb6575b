// SPDX-License-Identifier: Apache-2.0
// Cells with xyz, xz and yz; the first sees the others. z leaves what sees all three.
#include "oracle/definitions/plain_sight.h"

namespace cp::oracle {

Conclusions xyz_wing_twin(const Position& position) {
  Conclusions found;
  const std::set<Cell> pairs = cells_with_count(position, 2);
  for (const Cell pivot : cells_with_count(position, 3)) {
    for (const Cell one : pairs) {
      for (const Cell other : pairs) {
        if (!cells_see(position, pivot, one) || !cells_see(position, pivot, other)) continue;
        if (digits_in(position, {one, other}) != digits_in(position, {pivot})) continue;
        for (const Digit digit : digits_in(position, {pivot})) {
          const std::set<Candidate> all = candidates_there(position, {pivot, one, other}, {digit});
          if (all.size() == 3) note_as_new(found, excluded_by_all(position, all));
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
