// SPDX-License-Identifier: Apache-2.0
// Unique rectangle, type 2: four open cells in two rows, two columns and two boxes, all with the same two candidates; two
// or three of them have one digit more, the same for each. One of these holds it, or the pair could be exchanged
// (a second solution). So the digit leaves every cell that sees them all. The corners with the extra digit may
// lie side by side, across from each other or be three; the last two are often counted apart as type 5.
//
// Costs a look at every rectangle and at the pair of a corner that has no more. It does not find rectangles in which a corner
// has lost a digit of the pair. Each set of eliminations once.
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void unique_rectangle_2(const Position& position, StepSink& sink) {
  constexpr std::string_view kId = "unique-rectangle-2";
  const int most_extras = is_weakened(kId, Guard::kSound) ? 2 : 1;
  OnceEach once(sink);
  for_each_deadly_rectangle(position, [&](const DeadlyRectangle& rectangle) {
    const CellSet rich = rectangle.rich();
    if (rich.size() < 2 || rectangle.all_extras().size() > most_extras) return true;
    const CellSet seen = position.shape().common_peers(rich);
    return once.take(by_supposing(kId, candidates_of(position, seen, DigitSet::of(rectangle.all_extras().lowest())), {pattern_line()},
                                  {pattern_of(rectangle.cells(), rectangle.pair)}));
  });
}

}  // namespace cp::techniques
