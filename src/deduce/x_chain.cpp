// SPDX-License-Identifier: Apache-2.0
// X-chain: strong links of one digit, joined by places that see each other, three strong links or more. If the digit is not at
// one end, each strong link in turn is filled and empties the next one's near place, so it is at the other end: it leaves every
// cell that sees both ends. Two different places are ends of a chain when a walk leads from one to the other; what counts is the
// shortest walk, and one of two strong links is left to the turbot chain. Costs one search in breadth from each place
// that has a strong link. It does not link groups of cells, nor a place with itself.
#include <algorithm>
#include <array>

#include "deduce/detail/guard.h"
#include "deduce/detail/one_digit_links.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "x-chain";

// What follows when the digit is not at the start, with the shortest way to each place.
struct Walks {
  Walks(const Position& position, Digit digit, const std::vector<deduce::StrongLink>& links, Cell start) {
    std::vector<Cell> filled;
    CellSet fallen;  // places that have passed on what they know
    const auto fall = [&](Cell cell, int count, int from) {
      fallen.add(cell);
      for (const deduce::StrongLink& link : links) {
        if (link.first != cell && link.second != cell) continue;
        const Cell next = link.other(cell);
        if (strong_count[next.index] != 0) continue;
        strong_count[next.index] = count;
        came_from[next.index] = from;
        through[next.index] = link.house;
        filled.push_back(next);
      }
    };
    fall(start, 1, -1);
    for (std::size_t i = 0; i < filled.size(); ++i) {
      const Cell here = filled[i];
      const CellSet emptied = (position.places(digit) & position.shape().peers(here)) - fallen;
      for (const Cell cell : emptied) fall(cell, strong_count[here.index] + 1, here.index);
    }
  }

  // The strong links from the start to this place.
  [[nodiscard]] std::vector<House> way_to(Cell end) const {
    std::vector<House> houses;
    for (int at = end.index; at >= 0; at = came_from[static_cast<std::size_t>(at)]) houses.push_back(through[static_cast<std::size_t>(at)]);
    std::reverse(houses.begin(), houses.end());
    return houses;
  }

  std::array<int, kMaxCells> strong_count{};  // 0: not reached
  std::array<int, kMaxCells> came_from{};
  std::array<House, kMaxCells> through{};
};

struct Chain {
  Cell one_end;
  Cell other_end;
  std::vector<House> houses;
};

// All pairs of ends, shortest chains first.
std::vector<Chain> chains_of(const Position& position, Digit digit, const std::vector<deduce::StrongLink>& links) {
  const int fewest = deduce::is_weakened(kId, deduce::Guard::kTrueSize) ? 2 : 3;
  std::vector<Chain> chains;
  CellSet linked;
  for (const deduce::StrongLink& link : links) linked |= CellSet::of(link.first) | CellSet::of(link.second);
  for (const Cell start : linked) {
    const Walks walks(position, digit, links, start);
    for (const Cell end : linked) {
      if (end <= start || walks.strong_count[end.index] < fewest) continue;
      chains.push_back({start, end, walks.way_to(end)});
    }
  }
  std::stable_sort(chains.begin(), chains.end(), [](const Chain& a, const Chain& b) { return a.houses.size() < b.houses.size(); });
  return chains;
}

}  // namespace

void x_chain(const Position& position, StepSink& sink) {
  deduce::ReportedOnce reported;
  for (const Digit digit : position.shape().digits()) {
    const std::vector<deduce::StrongLink> links = deduce::strong_links(position, digit);
    if (links.size() < 3) continue;
    for (const Chain& chain : chains_of(position, digit, links)) {
      if (!deduce::report_ends(kId, position, digit, chain.one_end, chain.other_end, chain.houses, reported, sink)) return;
    }
  }
}

}  // namespace cp::techniques
