// SPDX-License-Identifier: Apache-2.0
// A candidate that turns itself off along a chain with almost locked sets of two to four cells, and along none without.
#include "oracle/definitions/plain_chain.h"

namespace cp::oracle {

namespace {

StrongLinks links_of_sets(const Position& position) {
  StrongLinks links;
  for (const House house : all_houses(position)) {
    for (const std::size_t size : {2, 3, 4}) {
      for (const std::set<Cell>& cells : choices(open_cells(position, house), size)) {
        const std::set<Digit> digits = digits_in(position, cells);
        if (digits.size() != size + 1) continue;
        for (const Digit one : digits) {
          for (const Digit other : digits) {
            if (one != other) links.insert({candidates_there(position, cells, {one}), candidates_there(position, cells, {other})});
          }
        }
      }
    }
  }
  return links;
}

// Candidates that when true switch off a place or group from which links lead to another that they see.
std::set<Candidate> struck_along(const Position& position, const StrongLinks& links) {
  std::set<Places> nodes;
  for (const auto& [off, on] : links) nodes.insert(off);
  std::map<Places, std::set<Places>> onward;  // from what is off to what is off after one link
  for (const auto& [off, on] : links) {
    for (const Places& next : nodes) if (exclude_places(position, on, next)) onward[off].insert(next);
  }
  std::set<Candidate> struck;
  for (const Candidate& each : open_candidates(position)) {
    std::set<Places> off;
    for (const Places& node : nodes) if (exclude_places(position, {each}, node)) off.insert(node);
    const std::set<Places> seen = off;
    std::vector<Places> waiting(off.begin(), off.end());
    while (!waiting.empty()) {
      const Places last = waiting.back();
      waiting.pop_back();
      for (const Places& next : onward[last]) if (off.insert(next).second) waiting.push_back(next);
    }
    for (const auto& [from, on] : links) if (off.contains(from) && seen.contains(on)) struck.insert(each);
  }
  return struck;
}

}  // namespace

Conclusions set_chain_twin(const Position& position) {
  Conclusions found;
  if (position.shape().side() > 9) return found;
  StrongLinks links = links_of_cells(position);
  links.merge(links_of_houses(position));
  links.merge(links_of_overlaps(position));
  const std::set<Candidate> plain = struck_along(position, links);
  links.merge(links_of_sets(position));
  for (const Candidate& each : minus(struck_along(position, links), plain)) note_as_new(found, {each});
  return found;
}

}  // namespace cp::oracle
