// SPDX-License-Identifier: Apache-2.0
// XY-wing: a pivot with two candidates x, y sees two wings, one with x, z and one with y, z. Whichever digit the pivot
// holds, one of the wings holds z. So z leaves every cell that sees both wings.
//
// Sound: with z in such a cell, the wings hold x and y, and nothing is left for the pivot.
// Cost: the cells with two candidates, pivot by pivot; the wings by pairs.
// Does not find: wings that are reached over a longer way (xy-chain), a pivot with three candidates (xyz-wing). Three
// cells in one house are a naked triple and are found here as well. What several wings strike out alike is said once.
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/struck_once.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kXyWing = "xy-wing";

// One of the digits of the wing is in the pivot, the other is not.
bool fits_pivot(DigitSet pivot, DigitSet wing) { return (pivot & wing).size() == 1; }

}  // namespace

void xy_wing(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  const CellSet pairs = cells_with(position, 2);
  StruckOnce once;
  for (const Cell pivot : pairs) {
    const DigitSet digits = position.candidates(pivot);
    for (const Cell left : pairs & shape.peers(pivot)) {
      const DigitSet left_digits = position.candidates(left);
      if (!fits_pivot(digits, left_digits)) continue;
      const DigitSet right_digits = (digits - left_digits) | (left_digits - digits);
      for (const Cell right : is_weakened(kXyWing, Guard::kSound) ? pairs : pairs & shape.peers(pivot)) {
        if (position.candidates(right) != right_digits || right < left) continue;
        const Digit shared = (left_digits - digits).lowest();
        const CellSet struck = position.places(shared) & shape.peers(left) & shape.peers(right);
        std::vector<Candidate> eliminations = candidates_of(struck, shared);
        if (!once.is_new(eliminations)) continue;
        const std::vector<Line> lines = {lone(Constraint::of(left)), lone(Constraint::of(right)), lone(Constraint::of(pivot))};
        if (!sink.take(by_supposing(kXyWing, std::move(eliminations), lines))) return;
      }
    }
  }
}

}  // namespace cp::techniques
