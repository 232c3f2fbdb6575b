// SPDX-License-Identifier: Apache-2.0
// Unique rectangle, type 4: four open cells in two rows, two columns and two boxes, all with the same two candidates; two
// of them in a line (the roof) have extras, the others nothing else. In a house that holds the roof one digit of the pair
// has no place but the roof. If a roof cell held the other digit, its neighbour would hold the first, and the pair could
// be exchanged (a second solution). So the other digit leaves both roof cells.
//
// Costs a look at every rectangle and at the pair of a corner that has no more, and at two or four houses for each roof. It does
// not find rectangles in which a corner has lost a digit of the pair. Each set of eliminations once.
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void unique_rectangle_4(const Position& position, StepSink& sink) {
  constexpr std::string_view kId = "unique-rectangle-4";
  const int most_places = is_weakened(kId, Guard::kSound) ? 3 : 2;
  OnceEach once(sink);
  for_each_roof(position, [&](const DeadlyRectangle& rectangle, const std::array<Cell, 2>& roof) {
    for (const House house : shared_houses(position.shape(), roof[0], roof[1])) {
      for (const Digit locked : rectangle.pair) {
        if (position.places(house, locked).size() > most_places) continue;
        const Digit other = rectangle.other(locked);
        if (!once.take(by_supposing(kId, {{roof[0], other}, {roof[1], other}}, {lone(Constraint::of(house, locked)), pattern_line()},
                                    {pattern_of(rectangle.cells(), rectangle.pair)})))
          return false;
      }
    }
    return true;
  });
}

}  // namespace cp::techniques
