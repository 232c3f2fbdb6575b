// SPDX-License-Identifier: Apache-2.0
// W-wing: two cells with the same two candidates x, z do not see each other. Some house has exactly two places for x,
// other cells than these; one of them sees the first cell, the other the second. So x is not in both cells, and z is
// in one of them: z leaves every cell that sees both.
//
// Sound: with z in such a cell, both cells hold x, which then has no place in the house.
// Cost: pairs of cells with two candidates, and for each the houses with two places for one of the digits.
// Does not find: longer ways between the cells (alternating-chain), three places of which two are in one box
// (grouped-chain). What several houses strike out alike is said once.
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/struck_once.h"
#include "deduce/detail/tables.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kWWing = "w-wing";

// Does the house have exactly two places for the digit, one that sees `left` and one that sees `right`?
bool links(const Position& position, House house, Digit digit, Cell left, Cell right) {
  const CellSet places = position.places(house, digit);
  if (places.size() != 2 && !(is_weakened(kWWing, Guard::kSound) && places.size() == 3)) return false;
  if (places.has(left) || places.has(right)) return false;
  const CellSet by_left = places & position.shape().peers(left);
  const CellSet by_right = places & position.shape().peers(right);
  return !by_left.is_empty() && !by_right.is_empty() && (by_left | by_right).size() >= 2;
}

// Reports the wings of two cells that strike out `shared`. False when the sink has had enough.
bool report_w_wing(const Position& position, Cell left, Cell right, Digit shared, StruckOnce& once, StepSink& sink) {
  const Shape& shape = position.shape();
  std::vector<Candidate> eliminations = candidates_of(position.places(shared) & shape.peers(left) & shape.peers(right), shared);
  if (eliminations.empty()) return true;
  const Digit linked = (position.candidates(left) - DigitSet::of(shared)).lowest();
  for (const House house : houses_in_order(shape)) {
    if (!links(position, house, linked, left, right) || !once.is_new(eliminations)) continue;
    const std::vector<Line> lines = {lone(Constraint::of(left)), lone(Constraint::of(right)), lone(Constraint::of(house, linked))};
    if (!sink.take(by_supposing(kWWing, eliminations, lines))) return false;
  }
  return true;
}

}  // namespace

void w_wing(const Position& position, StepSink& sink) {
  const CellSet pairs = cells_with(position, 2);
  StruckOnce once;
  for (const Cell left : pairs) {
    for (const Cell right : pairs - position.shape().peers(left)) {
      if (right <= left || position.candidates(left) != position.candidates(right)) continue;
      for (const Digit shared : position.candidates(left)) {
        if (!report_w_wing(position, left, right, shared, once, sink)) return;
      }
    }
  }
}

}  // namespace cp::techniques
