// SPDX-License-Identifier: Apache-2.0
// Multi-colouring: two groups of strong links of one digit, each in two colours (see simple colouring). When a colour of one group
// sees a colour of the other, not both are true, so one of the two opposite colours is: a candidate that sees a
// place of each of these falls. When a colour sees both colours of the other group, it is false, all of it. Costs a look at each
// pair of groups. It does not join three groups, and passes over a group that cannot be coloured.
#include "deduce/detail/colour_pairs.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "multi-colouring";

using deduce::ColourPair;

bool report(const Position& position, const CellSet& struck, const ColourPair& pair, std::size_t colour, const std::vector<Line>& extra, deduce::ReportedOnce& reported, StepSink& sink) {
  std::vector<Candidate> eliminations;
  for (const Cell cell : struck & position.places(pair.digit)) eliminations.push_back({cell, pair.digit});
  return !reported.is_new(eliminations) || sink.take(deduce::by_colours(kId, eliminations, pair, colour, extra));
}

// What follows from a colour of one group that sees something of the other.
bool look_at(const Position& position, const ColourPair& pair, std::size_t colour, const ColourPair& other, deduce::ReportedOnce& reported, StepSink& sink) {
  const Shape& shape = position.shape();
  const bool is_weak = deduce::is_weakened(kId, deduce::Guard::kSound);
  int seen_colours = 0;
  for (const std::size_t other_colour : {0U, 1U}) {
    const CellSet seen = deduce::seen_by_any(shape, pair.colour[colour], other.colour[other_colour]);
    if (seen.is_empty()) continue;
    ++seen_colours;
    const CellSet& places = position.places(pair.digit);
    const CellSet see_one = deduce::seen_by_any(shape, pair.colour[1 - colour], places);
    const CellSet see_other = deduce::seen_by_any(shape, other.colour[1 - other_colour], places);
    const std::vector<Line> extra = other.spread(seen.first(), false);
    if (!report(position, is_weak ? see_one | see_other : see_one & see_other, pair, colour, extra, reported, sink)) return false;
    if (seen_colours < 2) continue;
    if (!report(position, pair.colour[colour], pair, colour, extra, reported, sink)) return false;
  }
  return true;
}

}  // namespace

void multi_colouring(const Position& position, StepSink& sink) {
  deduce::ReportedOnce reported;
  for (const Digit digit : position.shape().digits()) {
    const std::vector<ColourPair> pairs = deduce::colour_pairs(position, digit);
    for (const ColourPair& pair : pairs) {
      for (const ColourPair& other : pairs) {
        if (pair.colour[0] == other.colour[0]) continue;
        for (const std::size_t colour : {0U, 1U}) {
          if (!look_at(position, pair, colour, other, reported, sink)) return;
        }
      }
    }
  }
}

}  // namespace cp::techniques
