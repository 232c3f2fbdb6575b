// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/one_digit_links.h"

#include "deduce/detail/guard.h"
#include "deduce/detail/tables.h"

namespace cp::deduce {

std::vector<StrongLink> strong_links(const Position& position, Digit digit) {
  std::vector<StrongLink> links;
  for (const House house : houses_in_order(position.shape())) {
    CellSet places = position.places(house, digit);
    if (places.size() != 2) continue;
    const Cell first = places.first();
    places.remove(first);
    links.push_back({house, first, places.first()});
  }
  return links;
}

CellSet seen_by_any(const Shape& shape, const CellSet& cells, const CellSet& from) {
  CellSet seen;
  for (const Cell cell : cells) seen |= shape.peers(cell);
  return seen & from;
}

bool report_ends(std::string_view technique, const Position& position, Digit digit, Cell one_end, Cell other_end, const std::vector<House>& houses,
                 ReportedOnce& reported, StepSink& sink) {
  const CellSet& one = position.shape().peers(one_end);
  const CellSet& other = position.shape().peers(other_end);
  const CellSet seen = is_weakened(technique, Guard::kSound) ? one | other : one & other;
  std::vector<Candidate> eliminations;
  for (const Cell cell : position.places(digit) & seen) eliminations.push_back({cell, digit});
  if (!reported.is_new(eliminations)) return true;
  std::vector<Line> lines;
  for (const House house : houses) lines.push_back(lone(Constraint::of(house, digit)));
  return sink.take(by_supposing(technique, std::move(eliminations), std::move(lines)));
}

}  // namespace cp::deduce
