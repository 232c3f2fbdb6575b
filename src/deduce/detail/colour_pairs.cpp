// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/colour_pairs.h"

namespace cp::deduce {

namespace {

// Colours the group of `start`; false when a place would need both colours.
bool paint(const std::vector<StrongLink>& links, Cell start, ColourPair& pair) {
  pair.colour[0].add(start);
  for (bool grows = true; grows;) {
    grows = false;
    for (const StrongLink& link : links) {
      for (const std::size_t colour : {0U, 1U}) {
        const CellSet before = pair.colour[1 - colour];
        if (pair.colour[colour].has(link.first)) pair.colour[1 - colour].add(link.second);
        if (pair.colour[colour].has(link.second)) pair.colour[1 - colour].add(link.first);
        grows = grows || before != pair.colour[1 - colour];
      }
    }
  }
  for (const StrongLink& link : links) {
    if ((pair.colour[0] | pair.colour[1]).has(link.first)) pair.links.push_back(link);
  }
  return !pair.colour[0].meets(pair.colour[1]);
}

}  // namespace

std::vector<Line> ColourPair::spread(Cell start, bool is_true) const {
  std::vector<Line> lines;
  std::vector<Cell> reached = {start};
  CellSet known = CellSet::of(start);
  const std::size_t start_colour = colour[0].has(start) ? 0 : 1;
  const CellSet& filled = colour[is_true ? start_colour : 1 - start_colour];
  for (std::size_t i = 0; i < reached.size(); ++i) {
    const Cell here = reached[i];
    for (const StrongLink& link : links) {
      if ((link.first != here && link.second != here) || known.has(link.other(here))) continue;
      known.add(link.other(here));
      reached.push_back(link.other(here));
      if (filled.has(link.other(here))) lines.push_back(lone(Constraint::of(link.house, digit)));
    }
  }
  return lines;
}

std::vector<ColourPair> colour_pairs(const Position& position, Digit digit) {
  const std::vector<StrongLink> links = strong_links(position, digit);
  CellSet linked;
  for (const StrongLink& link : links) linked |= CellSet::of(link.first) | CellSet::of(link.second);
  std::vector<ColourPair> pairs;
  while (!linked.is_empty()) {
    ColourPair pair;
    pair.digit = digit;
    const bool is_possible = paint(links, linked.first(), pair);
    linked -= pair.colour[0] | pair.colour[1];
    if (is_possible) pairs.push_back(std::move(pair));
  }
  return pairs;
}

Step by_colours(std::string_view technique, std::vector<Candidate> eliminations, const ColourPair& pair, std::size_t with_extra, const std::vector<Line>& extra) {
  const StrongLink& link = pair.links.front();
  std::vector<Argument> cases;
  for (const Cell end : {link.first, link.second}) {
    std::vector<Line> lines = pair.spread(end, true);
    if (pair.colour[with_extra].has(end)) lines.insert(lines.end(), extra.begin(), extra.end());
    cases.push_back({std::move(lines), {}, {}});
  }
  return by_cases(technique, std::move(eliminations), Constraint::of(link.house, pair.digit), std::move(cases));
}

}  // namespace cp::deduce
