// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_chain.h"

namespace cp::oracle {

namespace {

void add_link(StrongLinks& links, const Places& one, const Places& other) {
  links.insert({one, other});
  links.insert({other, one});
}

// Two candidates as a link of single ones.
void add_two(StrongLinks& links, const std::set<Candidate>& two) {
  if (two.size() == 2) add_link(links, {*two.begin()}, {*two.rbegin()});
}

}  // namespace

StrongLinks links_of_cells(const Position& position) {
  StrongLinks links;
  for (const Candidate& each : open_candidates(position)) add_two(links, candidates_there(position, {each.cell}, all_digits(position)));
  return links;
}

StrongLinks links_of_houses(const Position& position) {
  StrongLinks links;
  for (const House house : all_houses(position)) {
    for (const Digit digit : all_digits(position)) add_two(links, candidates_there(position, open_cells(position, house), {digit}));
  }
  return links;
}

StrongLinks links_of_overlaps(const Position& position) {
  StrongLinks links;
  const auto in_two = [&](House base, House one, House other, Digit digit) {
    const Places all = candidates_there(position, open_cells(position, base), {digit});
    const Places first = minus(all, minus(all, candidates_there(position, open_cells(position, one), {digit})));
    const Places second = minus(all, minus(all, candidates_there(position, open_cells(position, other), {digit})));
    if (!first.empty() && !second.empty() && first.size() + second.size() == all.size() && all.size() > 2) add_link(links, first, second);
  };
  for (const Digit digit : all_digits(position)) {
    for (const House base : all_houses(position)) {
      for (const House one : all_houses(position)) {
        for (const House other : all_houses(position)) {
          const HouseKind kind = position.shape().kind(one);
          const bool is_box_and_line = (position.shape().kind(base) == HouseKind::kBox) != (kind == HouseKind::kBox);
          if (one < other && kind == position.shape().kind(other) && is_box_and_line) in_two(base, one, other, digit);
        }
      }
    }
  }
  return links;
}

bool exclude_places(const Position& position, const Places& one, const Places& other) {
  for (const Candidate& a : one) {
    for (const Candidate& b : other) {
      if (!exclude_each_other(position, a, b)) return false;
    }
  }
  return true;
}

std::map<std::pair<Places, Places>, int> joined_ends(const Position& position, const StrongLinks& links) {
  // One link further on: what is false next to something true, and what its links make true.
  std::map<Places, std::set<Places>> onward;
  for (const auto& [on, unused] : links) {
    if (onward.contains(on)) continue;
    std::set<Places>& next = onward[on];
    for (const auto& [off, then] : links) {
      if (exclude_places(position, on, off)) next.insert(then);
    }
  }
  std::map<std::pair<Places, Places>, int> joined;
  for (const auto& pair : links) joined[pair] = 1;
  for (const auto& [start, unused] : onward) {
    std::set<Places> newest;
    for (const auto& [ends, count] : joined) if (ends.first == start && count == 1) newest.insert(ends.second);
    for (int count = 2; !newest.empty(); ++count) {
      std::set<Places> further;
      for (const Places& on : newest) {
        for (const Places& then : onward[on]) if (joined.try_emplace({start, then}, count).second) further.insert(then);
      }
      newest = further;
    }
  }
  return joined;
}

std::set<Candidate> excluded_by_both(const Position& position, const Places& one, const Places& other) {
  std::set<Candidate> all = one;
  all.insert(other.begin(), other.end());
  return excluded_by_all(position, all);
}

}  // namespace cp::oracle
