// SPDX-License-Identifier: Apache-2.0
// Chain with almost locked sets: an alternating chain whose strong links may also be almost locked sets. Two to four cells
// of a house with one digit more than cells: when one of the digits has no place in them, each of the others has one. So of the
// places for the one digit and those for another one group holds its digit (strong link). Groups of a box and a line link as in the
// grouped chain.
//
// Sound: with the struck candidate true everything that it sees is off; following the chain turns on a group that it sees.
// Cost: all such sets, and a search in breadth over bit sets from each candidate; searched on grids up to 9x9 only.
// Does not find: sets of five cells or more, two sets that share two digits at once except as a chain. Candidates that a chain
// without sets strikes out (alternating and grouped chain, loop, locked candidates) are left to it. Each candidate is a step
// of its own, those with shorter chains first.
#include <algorithm>
#include <set>

#include "deduce/detail/chain_graph.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/tables.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kSetChain = "set-chain";
constexpr int kLargestSet = 4;

// Links each two digits of the set. The house is one that holds all its cells.
void link_set(ChainGraph& graph, const Position& position, House house, const std::vector<Cell>& set, DigitSet digits) {
  Facts bases;
  Facts covers;
  std::vector<int> nodes;
  for (const Cell cell : set) bases.push_back(Constraint::of(cell));
  for (const Digit digit : digits) {
    covers.push_back(Constraint::of(house, digit));
    CellSet places;
    for (const Cell cell : set) {
      if (position.has({cell, digit})) places.add(cell);
    }
    nodes.push_back(graph.node(digit, places));
  }
  const int source = graph.source(std::move(bases), std::move(covers));
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) graph.link(nodes[k], nodes[i], source);
  }
}

// Sets of a house, cell by cell.
void extend_set(ChainGraph& graph, const Position& position, House house, const HouseTable& table, int from, std::vector<Cell>& set, DigitSet digits) {
  const auto size = static_cast<int>(set.size());
  const int more = is_weakened(kSetChain, Guard::kSound) ? 2 : 1;
  if (size >= 2 && digits.size() > size && digits.size() <= size + more) link_set(graph, position, house, set, digits);
  if (size == kLargestSet) return;
  for (int i = from; i < table.cell_count; ++i) {
    const DigitSet all = digits | DigitSet(table.digits_of[static_cast<std::size_t>(i)]);
    if (all.size() > kLargestSet + more) continue;
    set.push_back(table.cells[static_cast<std::size_t>(i)]);
    extend_set(graph, position, house, table, i + 1, set, all);
    set.pop_back();
  }
}

void link_sets(ChainGraph& graph, const Position& position) {
  for (const House house : houses_in_order(position.shape())) {
    const HouseTable table(position, house);
    std::vector<Cell> set;
    extend_set(graph, position, house, table, 0, set, {});
  }
}

struct StruckByChain {
  int links = 0;
  int end = 0;
  Candidate candidate;
};

// The candidates that a chain strikes out, with the end of the shortest; not those of `left_out`.
std::vector<StruckByChain> struck_by_chains(const ChainGraph& graph, const Position& position, const std::set<Candidate>& left_out) {
  std::vector<StruckByChain> found;
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) {
      if (left_out.contains({cell, digit})) continue;
      const std::vector<int> off = graph.nodes_seen_from({cell, digit});
      const std::vector<int> links = graph.links_from(off);
      StruckByChain best;
      for (const int node : off) {
        const int count = links[static_cast<std::size_t>(node)];
        if (count > 0 && (best.links == 0 || count < best.links)) best = {count, node, {cell, digit}};
      }
      if (best.links > 0) found.push_back(best);
    }
  }
  std::stable_sort(found.begin(), found.end(), [](const StruckByChain& a, const StruckByChain& b) { return a.links < b.links; });
  return found;
}

void link_all_but_sets(ChainGraph& graph, const Position& position) {
  link_cells(graph, position, kSetChain);
  link_houses(graph, position, kSetChain);
  link_overlaps(graph, position, kSetChain);
}

}  // namespace

void set_chain(const Position& position, StepSink& sink) {
  if (position.shape().side() > 9) return;
  ChainGraph without(position);
  link_all_but_sets(without, position);
  without.settle();
  std::set<Candidate> plain;
  for (const StruckByChain& each : struck_by_chains(without, position, {})) plain.insert(each.candidate);
  if (is_weakened(kSetChain, Guard::kTrueSize)) plain.clear();

  ChainGraph graph(position);
  link_all_but_sets(graph, position);
  link_sets(graph, position);
  graph.settle();
  for (const StruckByChain& each : struck_by_chains(graph, position, plain)) {
    const std::vector<int> off = graph.nodes_seen_from(each.candidate);
    std::vector<Line> lines = graph.lines(off, each.end, graph.links_from(off));
    if (!sink.take(by_supposing(kSetChain, {each.candidate}, std::move(lines)))) return;
  }
}

}  // namespace cp::techniques
