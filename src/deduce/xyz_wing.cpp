// SPDX-License-Identifier: Apache-2.0
// XYZ-wing: a pivot with three candidates x, y, z sees two wings, one with x, z and one with y, z. Whichever digit the
// pivot holds, z is in the pivot or in one of the wings. So z leaves every other cell that sees all three.
//
// Sound: with z in such a cell, the wings hold x and y, and nothing is left for the pivot.
// Cost: the cells with three candidates, and pairs of cells with two among their peers.
// Does not find: larger pivots and wings (those are locked sets). Three cells in one house are a naked triple and are
// found here as well. What several wings strike out alike is said once.
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/struck_once.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kXyzWing = "xyz-wing";

}  // namespace

void xyz_wing(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  const CellSet pairs = cells_with(position, 2);
  StruckOnce once;
  for (const Cell pivot : cells_with(position, 3)) {
    const DigitSet digits = position.candidates(pivot);
    const CellSet wings = pairs & shape.peers(pivot);
    for (const Cell left : wings) {
      for (const Cell right : wings) {
        const DigitSet both = position.candidates(left) & position.candidates(right);
        const DigitSet all = position.candidates(left) | position.candidates(right);
        if (right <= left || both.size() != 1 || all != digits) continue;
        const Digit shared = both.lowest();
        CellSet struck = position.places(shared) & shape.peers(left) & shape.peers(right);
        if (!is_weakened(kXyzWing, Guard::kSound)) struck &= shape.peers(pivot);
        struck.remove(pivot);
        std::vector<Candidate> eliminations = candidates_of(struck, shared);
        if (!once.is_new(eliminations)) continue;
        const std::vector<Line> lines = {lone(Constraint::of(left)), lone(Constraint::of(right)), lone(Constraint::of(pivot))};
        if (!sink.take(by_supposing(kXyzWing, std::move(eliminations), lines))) return;
      }
    }
  }
}

}  // namespace cp::techniques
