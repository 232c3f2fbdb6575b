// SPDX-License-Identifier: Apache-2.0
// Two corners of a rectangle, across from each other, with more than its pair: a digit of the pair has in both rows, or in
// both columns, no place outside the rectangle. It leaves the two corners.
#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

Conclusions unique_rectangle_6_twin(const Position& position) {
  Conclusions found;
  for (const PlainRectangle& rectangle : plain_pair_rectangles(position)) {
    if (rectangle.rich.size() != 2 || corner_across(position, rectangle.corners, *rectangle.rich.begin()) != *rectangle.rich.rbegin()) continue;
    for (const HouseKind kind : {HouseKind::kRow, HouseKind::kColumn}) {
      for (const Digit digit : rectangle.pair) {
        std::set<Cell> outside;
        for (const House line : houses_of_kind(position, kind)) {
          const std::set<Cell> places = places_of(position, line, {digit});
          if (minus(rectangle.corners, places).size() == 2) outside.merge(minus(places, rectangle.corners));
        }
        if (outside.empty()) note_rectangle(found, candidates_there(position, rectangle.rich, {digit}));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
