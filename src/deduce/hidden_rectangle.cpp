// SPDX-License-Identifier: Apache-2.0
// Hidden rectangle: four open cells in two rows, two columns and two boxes, all with the same two candidates; one corner
// has nothing else. From the corner across, one digit of the pair has strong links along both sides: in a house of each
// side only the two corners can hold it. If the corner across held the other digit, both its neighbours would
// hold the first, the plain corner the other, and the pair could be exchanged (a second solution). So the other digit
// leaves the corner across.
//
// Extras of the three other corners do not matter; where they are few, types 1, 4 and 6 may say the same. Costs a look at
// every rectangle and at the pair of a corner that has no more. It does not find rectangles in which strong links of
// both digits are needed, or a corner has lost a digit of the pair. Each set of eliminations once.
#include <optional>

#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kId = "hidden-rectangle";

// A house in which only these two cells can hold the digit.
std::optional<House> strong_link(const Position& position, Cell one, Cell other, Digit digit, int most_places) {
  for (const House house : shared_houses(position.shape(), one, other)) {
    if (position.places(house, digit).size() <= most_places) return house;
  }
  return std::nullopt;
}

}  // namespace

void hidden_rectangle(const Position& position, StepSink& sink) {
  const int most_places = is_weakened(kId, Guard::kSound) ? 3 : 2;
  OnceEach once(sink);
  for_each_deadly_rectangle(position, [&](const DeadlyRectangle& rectangle) {
    for (std::size_t plain = 0; plain < 4; ++plain) {
      if (!rectangle.extras[plain].is_empty()) continue;
      const Cell across = rectangle.corners[3 - plain];
      for (const Digit digit : rectangle.pair) {
        const auto one = strong_link(position, across, rectangle.corners[plain ^ 1U], digit, 2);
        const auto two = strong_link(position, across, rectangle.corners[plain ^ 2U], digit, most_places);
        if (!one || !two) continue;
        if (!once.take(by_supposing(kId, {{across, rectangle.other(digit)}},
                                    {lone(Constraint::of(*one, digit)), lone(Constraint::of(*two, digit)), pattern_line()},
                                    {pattern_of(rectangle.cells(), rectangle.pair)})))
          return false;
      }
    }
    return true;
  });
}

}  // namespace cp::techniques
