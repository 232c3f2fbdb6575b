// SPDX-License-Identifier: Apache-2.0
// The graph behind all chains. A node is some places of one digit: it is on when one of them is true, off when none is.
// A link (strong) says: when the one node is off, the other is on. Sight (weak) says: when the one is on, the other is
// off, because each place of the one sees each of the other. A chain goes off, on, off, on: link, sight, link, sight.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <string_view>
#include <vector>

#include "deduce/detail/arguments.h"
#include "grid/position.h"

namespace cp::deduce {

struct ChainNode {
  Digit digit;
  CellSet cells;
  CellSet seen;                 // places of the digit that see all of `cells`
  [[nodiscard]] bool is_single() const { return cells.size() == 1; }
};

// What makes links hold, as a line of an argument: the bases and covers of a sum whose rest lies in the two nodes.
struct LinkSource {
  Facts bases;
  Facts covers;
};
struct ChainLink {
  int to = 0;
  int source = 0;
};

class ChainGraph {
 public:
  explicit ChainGraph(const Position& position) : position_(position) {}

  int node(Digit digit, const CellSet& cells);  // finds or adds
  int source(Facts bases, Facts covers = {});
  void link(int one, int other, int source);    // both ways
  void settle();                                // after the last link, before what follows

  [[nodiscard]] int size() const { return static_cast<int>(nodes_.size()); }
  [[nodiscard]] const ChainNode& at(int node) const { return nodes_[static_cast<std::size_t>(node)]; }
  [[nodiscard]] bool is_linked(int one, int other) const { return bit(linked_, one, other); }
  [[nodiscard]] bool sees(int one, int other) const { return bit(sight_, one, other); }
  [[nodiscard]] int find(Digit digit, const CellSet& cells) const;  // -1: there is no such node

  // For each node: how many links the shortest chain has that turns it on when the nodes of `off` are off; 0: none.
  [[nodiscard]] std::vector<int> links_from(const std::vector<int>& off) const;
  // The lines of such a chain, for an argument in which the nodes `off` and `end` are off from the start.
  [[nodiscard]] std::vector<Line> lines(const std::vector<int>& off, int end, const std::vector<int>& links) const;
  // Candidates that see both nodes (each place of them).
  [[nodiscard]] std::vector<Candidate> seen_by_both(int one, int other) const;
  // The nodes of which the candidate sees each place, ordered.
  [[nodiscard]] std::vector<int> nodes_seen_from(Candidate candidate) const;

 private:
  using Word = std::uint64_t;
  using Rows = std::vector<Word>;

  [[nodiscard]] Word* row(Rows& rows, int node) const { return rows.data() + static_cast<std::size_t>(node) * words_; }
  [[nodiscard]] const Word* row(const Rows& rows, int node) const { return rows.data() + static_cast<std::size_t>(node) * words_; }
  [[nodiscard]] bool bit(const Rows& rows, int one, int other) const { return ((row(rows, one)[other >> 6] >> (other & 63)) & 1U) != 0; }
  void note_sight();
  [[nodiscard]] Line line_over(const ChainLink& link, int off, int next_off) const;
  [[nodiscard]] Constraint joint(const ChainNode& on, const ChainNode& off) const;

  const Position& position_;
  std::vector<ChainNode> nodes_;
  std::map<std::pair<int, std::array<Word, CellSet::kWords>>, int> numbers_;
  std::array<std::vector<int>, kMaxSide> of_digit_;
  std::array<std::vector<int>, kMaxCells> single_in_;
  std::vector<LinkSource> sources_;
  std::vector<std::vector<ChainLink>> links_;
  std::size_t words_ = 0;
  Rows linked_;  // off -> on
  Rows sight_;   // on -> off
  Rows onward_;  // on -> off -> on
};

// Links of the cells with two candidates, and of the houses in which a digit has two places.
void link_cells(ChainGraph& graph, const Position& position, std::string_view technique);
void link_houses(ChainGraph& graph, const Position& position, std::string_view technique);
// Links of the houses whose places for a digit lie in two overlaps of box and line, at least one with several places.
void link_overlaps(ChainGraph& graph, const Position& position, std::string_view technique);

// A chain from a node that is off to one that is on, and what sees both ends.
struct FoundChain {
  int links = 0;
  int start = 0;
  int end = 0;
  std::vector<Candidate> struck;
};

// All chains that `wanted(start, end, links)` accepts and that strike something out, each pair of ends once (start <= end),
// shorter ones first.
template <typename Wanted>
std::vector<FoundChain> find_chains(const ChainGraph& graph, Wanted wanted) {
  std::vector<FoundChain> found;
  for (int start = 0; start < graph.size(); ++start) {
    const std::vector<int> links = graph.links_from({start});
    for (int end = start; end < graph.size(); ++end) {
      const int count = links[static_cast<std::size_t>(end)];
      if (count == 0 || !wanted(start, end, count)) continue;
      std::vector<Candidate> struck = graph.seen_by_both(start, end);
      if (!struck.empty()) found.push_back({count, start, end, std::move(struck)});
    }
  }
  std::stable_sort(found.begin(), found.end(), [](const FoundChain& a, const FoundChain& b) {
    return a.links != b.links ? a.links < b.links : a.struck < b.struck;
  });
  return found;
}

// Reports them, each set of eliminations once.
void report_chains(std::string_view technique, const ChainGraph& graph, std::vector<FoundChain> chains, StepSink& sink);

}  // namespace cp::deduce
