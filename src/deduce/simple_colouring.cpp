// SPDX-License-Identifier: Apache-2.0
// Simple colouring: the places of a digit that strong links join are given two colours, turn and turn about; all of one colour are
// true, all of the other false. Trap: a candidate outside that sees both colours is false. Wrap: a colour that sees itself is
// false, all of it. Groups of three places or more; a single link is left to pointing and claiming. Costs one walk
// through each group. It does not compare groups, and passes over a group that cannot be coloured.
#include "deduce/detail/colour_pairs.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "simple-colouring";

std::vector<Candidate> as_candidates(const CellSet& cells, Digit digit) {
  std::vector<Candidate> candidates;
  for (const Cell cell : cells) candidates.push_back({cell, digit});
  return candidates;
}

bool look_at(const Position& position, const deduce::ColourPair& pair, deduce::ReportedOnce& reported, StepSink& sink) {
  const Shape& shape = position.shape();
  const CellSet outside = position.places(pair.digit) - pair.colour[0] - pair.colour[1];
  const CellSet see_first = deduce::seen_by_any(shape, pair.colour[0], outside);
  const CellSet see_second = deduce::seen_by_any(shape, pair.colour[1], outside);
  const CellSet trapped = deduce::is_weakened(kId, deduce::Guard::kSound) ? see_first | see_second : see_first & see_second;
  const std::vector<Candidate> trap = as_candidates(trapped, pair.digit);
  if (reported.is_new(trap) && !sink.take(deduce::by_colours(kId, trap, pair))) return false;
  for (const CellSet& colour : pair.colour) {
    if (deduce::seen_by_any(shape, colour, colour).is_empty()) continue;
    const std::vector<Candidate> wrap = as_candidates(colour, pair.digit);
    if (reported.is_new(wrap) && !sink.take(deduce::by_colours(kId, wrap, pair))) return false;
  }
  return true;
}

}  // namespace

void simple_colouring(const Position& position, StepSink& sink) {
  const int fewest = deduce::is_weakened(kId, deduce::Guard::kTrueSize) ? 2 : 3;
  deduce::ReportedOnce reported;
  for (const Digit digit : position.shape().digits()) {
    for (const deduce::ColourPair& pair : deduce::colour_pairs(position, digit)) {
      if ((pair.colour[0] | pair.colour[1]).size() < fewest) continue;
      if (!look_at(position, pair, reported, sink)) return;
    }
  }
}

}  // namespace cp::techniques
