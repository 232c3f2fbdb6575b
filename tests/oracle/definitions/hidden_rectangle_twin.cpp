// SPDX-License-Identifier: Apache-2.0
// A corner with the pair only; the corner across shares with each of its two neighbours a house in which no third cell has
// one digit of the pair. The other digit leaves the corner across.
#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

Conclusions hidden_rectangle_twin(const Position& position) {
  Conclusions found;
  for (const PlainRectangle& rectangle : plain_pair_rectangles(position)) {
    for (const Cell plain : minus(rectangle.corners, rectangle.rich)) {
      const Cell across = corner_across(position, rectangle.corners, plain);
      for (const Digit digit : rectangle.pair) {
        std::set<Cell> linked;
        for (const House house : all_houses(position)) {
          const std::set<Cell> places = places_of(position, house, {digit});
          if (places.size() == 2 && places.contains(across)) linked.insert(places.begin(), places.end());
        }
        if (minus(rectangle.corners, linked) != std::set<Cell>{plain}) continue;
        note_rectangle(found, candidates_there(position, {across}, minus(rectangle.pair, {digit})));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
