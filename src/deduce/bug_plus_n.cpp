// SPDX-License-Identifier: Apache-2.0
// BUG+n: every open cell has two candidates, two to four cells have three; without one candidate of each of these, each
// digit would have two places (or none) in every house, and every cell could be given its other digit. A puzzle with one
// solution never has such a position, so one of the extra candidates is true. A candidate that cannot stand beside any
// of them (it sees an extra of its own digit, or shares the cell of another) is false.
//
// Costs at most 81 choices of extras, and a count of the places in every house for each. It does not find more than four
// cells with three candidates, cells with more than three, nor what follows only by chains from the extras. Each set of
// eliminations once.
#include "deduce/detail/bivalue_graves.h"
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kId = "bug-plus-n";

// Candidates that exclude every one of the extras.
std::vector<Candidate> excluding_all(const Position& position, const std::vector<Candidate>& extras) {
  std::vector<Candidate> found;
  for (const Cell cell : position.open()) {
    DigitSet digits = position.candidates(cell);
    for (const Candidate& extra : extras) {
      if (extra.cell == cell) digits.remove(extra.digit);
      else digits &= position.shape().peers(cell).has(extra.cell) ? DigitSet::of(extra.digit) : DigitSet();
    }
    for (const Digit digit : digits) found.push_back({cell, digit});
  }
  return found;
}

// Chooses an extra in each of the cells. False when the sink has had enough.
bool choose(const Position& position, CellSet cells, std::vector<Candidate>& extras, OnceEach& once) {
  if (cells.is_empty()) {
    if (!is_grave_without(kId, position, extras)) return true;
    return once.take(by_supposing(kId, excluding_all(position, extras), {pattern_line()}, {grave_without(position, extras)}));
  }
  const Cell cell = cells.first();
  cells.remove(cell);
  for (const Digit digit : position.candidates(cell)) {
    extras.push_back({cell, digit});
    const bool goes_on = choose(position, cells, extras, once);
    extras.pop_back();
    if (!goes_on) return false;
  }
  return true;
}

}  // namespace

void bug_plus_n(const Position& position, StepSink& sink) {
  const CellSet three = cells_with_three(position);
  if (three.size() < 2 || three.size() > 4) return;
  OnceEach once(sink);
  std::vector<Candidate> extras;
  choose(position, three, extras, once);
}

}  // namespace cp::techniques
