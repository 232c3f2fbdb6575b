// SPDX-License-Identifier: Apache-2.0
// Unique rectangle, type 6: four open cells in two rows, two columns and two boxes, all with the same two candidates; two
// across from each other have extras, the others nothing else. One digit of the pair has no other place in both rows
// (or both columns), so it stands on one diagonal or on the other, as in an X-wing. If it stood where the extras are, the
// plain corners would hold the other digit, and the pair could be exchanged (a second solution). So it leaves the two
// corners with extras.
//
// Costs a look at every rectangle and at the pair of a corner that has no more. It does not find the halves (one line locked and
// plain corners beside it), nor rectangles in which a corner has lost a digit of the pair. Each set of eliminations once.
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void unique_rectangle_6(const Position& position, StepSink& sink) {
  constexpr std::string_view kId = "unique-rectangle-6";
  const Shape& shape = position.shape();
  const bool one_line_will_do = is_weakened(kId, Guard::kSound);
  OnceEach once(sink);
  for_each_deadly_rectangle(position, [&](const DeadlyRectangle& rectangle) {
    const auto& at = rectangle.corners;
    const CellSet rich = rectangle.rich();
    if (rich != (CellSet::of(at[0]) | CellSet::of(at[3])) && rich != (CellSet::of(at[1]) | CellSet::of(at[2]))) return true;
    const std::array<std::array<House, 2>, 2> ways = {{{shape.houses_of(at[0])[0], shape.houses_of(at[3])[0]}, {shape.houses_of(at[0])[1], shape.houses_of(at[3])[1]}}};
    for (const Digit digit : rectangle.pair) {
      for (const auto& lines : ways) {
        if (position.places(lines[0], digit).size() > 2 || (position.places(lines[1], digit).size() > 2 && !one_line_will_do)) continue;
        if (!once.take(by_supposing(kId, candidates_of(position, rich, DigitSet::of(digit)),
                                    {lone(Constraint::of(lines[0], digit)), lone(Constraint::of(lines[1], digit)), pattern_line()},
                                    {pattern_of(rectangle.cells(), rectangle.pair)})))
          return false;
      }
    }
    return true;
  });
}

}  // namespace cp::techniques
