// SPDX-License-Identifier: Apache-2.0
// BUG+1: every open cell has two candidates, one has three; without one of these three, each digit would have two places
// (or none) in every house. Then giving every open cell its other digit would keep all houses as they are: a
// position that a puzzle with one solution never has. So the third digit is true, and the other two leave the cell.
//
// Costs a count of candidates in every cell, then of the places in every house. It does not find several cells with
// more than two candidates (BUG+n).
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kId = "bug-plus-one";

// The one cell with three candidates, when all others have two. An empty set otherwise.
CellSet cell_with_three(const Position& position) {
  CellSet found;
  for (const Cell cell : position.open()) {
    const int size = position.candidates(cell).size();
    if (size == 2) continue;
    if (size != 3 || !found.is_empty()) return {};
    found.add(cell);
  }
  return found;
}

// Two places or none for each digit in each house, leaving this candidate out?
bool is_even_without(const Position& position, Candidate left_out) {
  const Shape& shape = position.shape();
  const bool rows_will_do = is_weakened(kId, Guard::kSound);
  for (int i = 0; i < (rows_will_do ? shape.side() : shape.house_count()); ++i) {
    for (const Digit digit : shape.digits()) {
      CellSet places = position.places(House(i), digit);
      if (digit == left_out.digit) places.remove(left_out.cell);
      if (!places.is_empty() && places.size() != 2) return false;
    }
  }
  return true;
}

// All open cells with their candidates, this one aside.
DeadlyPattern all_pairs_without(const Position& position, Candidate left_out) {
  DeadlyPattern pattern;
  for (const Cell cell : position.open()) {
    pattern.cells.push_back(cell);
    pattern.digits.push_back(cell == left_out.cell ? position.candidates(cell) - DigitSet::of(left_out.digit) : position.candidates(cell));
  }
  return pattern;
}

}  // namespace

void bug_plus_one(const Position& position, StepSink& sink) {
  const CellSet three = cell_with_three(position);
  if (three.is_empty()) return;
  for (const Digit digit : position.candidates(three.first())) {
    const Candidate left_out{three.first(), digit};
    if (!is_even_without(position, left_out)) continue;
    const DigitSet others = position.candidates(left_out.cell) - DigitSet::of(digit);
    if (!sink.take(by_supposing(kId, candidates_of(position, three, others), {pattern_line()}, {all_pairs_without(position, left_out)}))) return;
  }
}

}  // namespace cp::techniques
