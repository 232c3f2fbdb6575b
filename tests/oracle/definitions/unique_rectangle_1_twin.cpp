// SPDX-License-Identifier: Apache-2.0
// A rectangle with a pair in all corners, one corner alone with more: the pair leaves it.
#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

Conclusions unique_rectangle_1_twin(const Position& position) {
  Conclusions found;
  for (const PlainRectangle& rectangle : plain_pair_rectangles(position)) {
    if (rectangle.rich.size() == 1) note_rectangle(found, candidates_there(position, rectangle.rich, rectangle.pair));
  }
  return found;
}

}  // namespace cp::oracle
