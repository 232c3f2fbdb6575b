// SPDX-License-Identifier: Apache-2.0
// Two corners of a rectangle, in a house, with more than its pair: no other cell of the house has one digit of the pair. The
// other digit leaves the two corners.
#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

Conclusions unique_rectangle_4_twin(const Position& position) {
  Conclusions found;
  for (const PlainRectangle& rectangle : plain_pair_rectangles(position)) {
    for (const House house : all_houses(position)) {
      if (rectangle.rich.size() != 2 || !lies_in(position, rectangle.rich, house)) continue;
      for (const Digit locked : rectangle.pair) {
        if (places_of(position, house, {locked}) != rectangle.rich) continue;
        note_rectangle(found, candidates_there(position, rectangle.rich, minus(rectangle.pair, {locked})));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
