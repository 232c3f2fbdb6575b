// SPDX-License-Identifier: Apache-2.0
// Remote pairs: cells with the same two candidates x, y form a chain in which each sees the next; from one to the next
// the digit changes. Two cells of it that do not see each other, joined by a way of an odd number of links, hold
// different digits: x and y leave every cell that sees both.
//
// Sound: with x or y in such a cell, the first end holds the other digit, and so on by turns; the last end is left empty.
// Cost: a search in breadth from each cell with two candidates, over cells with the same pair.
// Does not find: chains in which the pair changes (xy-chain). A way may visit a cell twice; the shortest is told.
// What several pairs of ends strike out alike is said once, shorter ways first.
#include <algorithm>
#include <array>

#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/struck_once.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kRemotePairs = "remote-pairs";

struct RemotePair {
  std::vector<Cell> way;  // from end to end
  std::vector<Candidate> struck;
};

// Ways from one cell to all with the same pair, the shortest of odd and of even length.
class PairWays {
 public:
  PairWays(const Position& position, const CellSet& same, Cell start) {
    reached_[0] = CellSet::of(start);
    std::vector<std::pair<Cell, int>> queue = {{start, 0}};
    for (std::size_t i = 0; i < queue.size(); ++i) {
      const auto [cell, parity] = queue[i];
      CellSet& known = reached_[static_cast<std::size_t>(1 - parity)];
      for (const Cell next : (same & position.shape().peers(cell)) - known) {
        known.add(next);
        before_[static_cast<std::size_t>(1 - parity)][next.index] = cell;
        queue.emplace_back(next, 1 - parity);
      }
    }
  }
  // Cells at the end of a way of odd length.
  [[nodiscard]] const CellSet& ends() const { return reached_[1]; }
  [[nodiscard]] std::vector<Cell> way_to(Cell end, Cell start) const {
    std::vector<Cell> way = {end};
    for (std::size_t parity = 1; way.back() != start || parity == 1; parity = 1 - parity) way.push_back(before_[parity][way.back().index]);
    std::reverse(way.begin(), way.end());
    return way;
  }

 private:
  std::array<CellSet, 2> reached_;
  std::array<std::array<Cell, kMaxCells>, 2> before_{};
};

std::vector<Candidate> struck_by(const Position& position, Cell left, Cell right, DigitSet digits) {
  std::vector<Candidate> struck;
  for (const Cell cell : position.open() & position.shape().peers(left) & position.shape().peers(right)) {
    for (const Digit digit : position.candidates(cell) & digits) struck.push_back({cell, digit});
  }
  return struck;
}

std::vector<RemotePair> find_remote_pairs(const Position& position) {
  const Shape& shape = position.shape();
  const CellSet pairs = cells_with(position, 2);
  std::vector<RemotePair> found;
  for (const Cell start : pairs) {
    const DigitSet digits = position.candidates(start);
    CellSet same;
    for (const Cell cell : pairs) {
      if (position.candidates(cell) == digits) same.add(cell);
    }
    if (same.size() < 4 && !is_weakened(kRemotePairs, Guard::kSound)) continue;
    const PairWays ways(position, same, start);
    for (const Cell end : is_weakened(kRemotePairs, Guard::kSound) ? same : ways.ends() - shape.peers(start)) {
      if (end <= start) continue;
      std::vector<Candidate> struck = struck_by(position, start, end, digits);
      if (struck.empty()) continue;
      found.push_back({ways.ends().has(end) ? ways.way_to(end, start) : std::vector<Cell>{start, end}, std::move(struck)});
    }
  }
  std::stable_sort(found.begin(), found.end(), [](const RemotePair& a, const RemotePair& b) { return a.way.size() < b.way.size(); });
  return found;
}

}  // namespace

void remote_pairs(const Position& position, StepSink& sink) {
  StruckOnce once;
  for (RemotePair& pair : find_remote_pairs(position)) {
    if (!once.is_new(pair.struck)) continue;
    std::vector<Line> lines;
    for (const Cell cell : pair.way) lines.push_back(lone(Constraint::of(cell)));
    if (!sink.take(by_supposing(kRemotePairs, std::move(pair.struck), std::move(lines)))) return;
  }
}

}  // namespace cp::techniques
