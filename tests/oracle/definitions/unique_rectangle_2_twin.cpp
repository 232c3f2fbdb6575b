// SPDX-License-Identifier: Apache-2.0
// A rectangle with a pair in all corners, some of them with one digit more, always the same: it leaves the cells that see
// all of these.
#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

Conclusions unique_rectangle_2_twin(const Position& position) {
  Conclusions found;
  for (const PlainRectangle& rectangle : plain_pair_rectangles(position)) {
    if (rectangle.rich.size() < 2 || rectangle.extras.size() != 1) continue;
    note_rectangle(found, candidates_there(position, seeing_all(position, rectangle.rich), rectangle.extras));
  }
  return found;
}

}  // namespace cp::oracle
