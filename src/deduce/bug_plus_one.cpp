// SPDX-License-Identifier: Apache-2.0
// BUG+1: every open cell has two candidates, one has three; without one of these three, each digit would have two places
// (or none) in every house. Then giving every open cell its other digit would keep all houses as they are: a
// position that a puzzle with one solution never has. So the third digit is true, and the other two leave the cell.
//
// Costs a count of candidates in every cell, then of the places in every house. Several cells with three candidates are
// left to bug-plus-n.
#include "deduce/detail/bivalue_graves.h"
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void bug_plus_one(const Position& position, StepSink& sink) {
  constexpr std::string_view kId = "bug-plus-one";
  const CellSet three = cells_with_three(position);
  if (three.size() != 1) return;
  for (const Digit digit : position.candidates(three.first())) {
    const std::vector<Candidate> extra = {{three.first(), digit}};
    if (!is_grave_without(kId, position, extra)) continue;
    const DigitSet others = position.candidates(three.first()) - DigitSet::of(digit);
    if (!sink.take(by_supposing(kId, candidates_of(position, three, others), {pattern_line()}, {grave_without(position, extra)}))) return;
  }
}

}  // namespace cp::techniques
