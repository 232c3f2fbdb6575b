// SPDX-License-Identifier: Apache-2.0
// Avoidable rectangle: four cells in two rows, two columns and two boxes, none a given, some placed on the way. If they came
// to hold only two digits, these could be exchanged (a second solution), whatever was placed there before.
// - Three are placed, with two digits: the one across from the open cell does not go into the open cell.
// - Two are placed with digits of the pair (two digits side by side, or the same digit across from each other), and each
//   open cell has one digit of the pair and the same one further digit: that leaves every cell that sees both.
//
// Costs a look at every rectangle. It does not find rectangles with one corner placed, nor those with more
// extras (as in types 3 and 4 of the unique rectangle). Each set of eliminations once.
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kId = "avoidable-rectangle";

// The digits of cells together.
DigitSet digits_of(const Position& position, const CellSet& cells) {
  DigitSet all;
  for (const Cell cell : cells) all |= position.candidates(cell);
  return all;
}

// Two open corners that have one digit of the pair each, and besides only `further`.
bool report_two_open(const Position& position, const CellSet& corners, const CellSet& open, DigitSet pair, OnceEach& once) {
  const DigitSet further = digits_of(position, open) - pair;
  if (further.size() != 1) return true;
  for (const Cell cell : open) {
    if (position.candidates(cell).size() != 2 || !further.is_subset_of(position.candidates(cell))) return true;
  }
  return once.take(by_supposing(kId, candidates_of(position, position.shape().common_peers(open), further), {pattern_line()}, {pattern_of(corners, pair)}));
}

bool report_rectangle(const Position& position, const CellSet& corners, OnceEach& once) {
  const CellSet open = corners - position.placed();
  const DigitSet known = digits_of(position, corners & position.placed());
  if (open.size() == 1 && known.size() == 2) {
    return once.take(by_supposing(kId, candidates_of(position, open, known), {pattern_line()}, {pattern_of(corners, known)}));
  }
  if (open.size() != 2) return true;
  if (known.size() == 2) return report_two_open(position, corners, open, known, once);
  for (const Digit other : digits_of(position, open)) {
    if (!report_two_open(position, corners, open, known | DigitSet::of(other), once)) return false;
  }
  return true;
}

}  // namespace

void avoidable_rectangle(const Position& position, StepSink& sink) {
  const bool givens_will_do = is_weakened(kId, Guard::kSound);
  OnceEach once(sink);
  for_each_rectangle(position.shape(), [&](const Corners& at) {
    CellSet corners;
    for (const Cell corner : at) corners.add(corner);
    if (corners.meets(position.givens()) && !givens_will_do) return true;
    return report_rectangle(position, corners, once);
  });
}

}  // namespace cp::techniques
