// SPDX-License-Identifier: Apache-2.0
// Unique rectangle, type 1: four open cells in two rows, two columns and two boxes, all with the same two candidates;
// three of them have nothing else. If the fourth held one of the two digits, all four would hold the pair, and the two
// digits could be exchanged: a second solution. So, in a puzzle with one solution, both digits leave the fourth.
//
// Costs a look at every rectangle (486 on 9x9) and at the pair of a corner that has no more. It does not find rectangles in
// which a corner has lost a digit of the pair, or is placed (avoidable-rectangle). Each set of eliminations once.
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void unique_rectangle_1(const Position& position, StepSink& sink) {
  constexpr std::string_view kId = "unique-rectangle-1";
  const int most_rich = is_weakened(kId, Guard::kSound) ? 2 : 1;
  OnceEach once(sink);
  for_each_deadly_rectangle(position, [&](const DeadlyRectangle& rectangle) {
    const CellSet rich = rectangle.rich();
    if (rich.is_empty() || rich.size() > most_rich) return true;
    return once.take(by_supposing(kId, candidates_of(position, CellSet::of(rich.first()), rectangle.pair), {pattern_line()},
                                  {pattern_of(rectangle.cells(), rectangle.pair)}));
  });
}

}  // namespace cp::techniques
