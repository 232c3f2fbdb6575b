// SPDX-License-Identifier: Apache-2.0
// Grouped chain: an alternating chain in which a link may join groups. A group is the two or more places of a digit in the
// cells that a box and a line share; it is true when one of its places is. When all places of a digit in a house lie
// in two such overlaps, one of the two holds it (strong link). A group sees what all of its places see (weak link).
// One of the two ends is true, so what sees both (every place of a group) is false.
//
// Sound: with such a candidate true both ends are false, but following the chain from the one makes the other true.
// Cost: a search in breadth over bit sets from each candidate or group that has a strong link.
// Does not find: locked sets as links (set-chain). Two ends that are single candidates and that a chain without groups joins
// are left to the alternating chain and the loop, ends joined by one strong link to locked candidates. Ends may see each other or
// be the same. What several pairs of ends strike out alike is said once.
#include "deduce/detail/chain_graph.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kGroupedChain = "grouped-chain";

// Which ends a chain of single candidates joins, by their numbers in the larger graph.
std::vector<std::vector<bool>> joined_without_groups(const Position& position, const ChainGraph& larger) {
  ChainGraph plain(position);
  link_cells(plain, position, kGroupedChain);
  link_houses(plain, position, kGroupedChain);
  plain.settle();
  const auto size = static_cast<std::size_t>(larger.size());
  std::vector<std::vector<bool>> joined(size, std::vector<bool>(size, false));
  std::vector<std::size_t> number;
  for (int i = 0; i < plain.size(); ++i) number.push_back(static_cast<std::size_t>(larger.find(plain.at(i).digit, plain.at(i).cells)));
  for (int i = 0; i < plain.size(); ++i) {
    const std::vector<int> links = plain.links_from({i});
    for (std::size_t k = 0; k < links.size(); ++k) joined[number[static_cast<std::size_t>(i)]][number[k]] = links[k] > 0;
  }
  return joined;
}

}  // namespace

void grouped_chain(const Position& position, StepSink& sink) {
  ChainGraph graph(position);
  link_cells(graph, position, kGroupedChain);
  link_houses(graph, position, kGroupedChain);
  link_overlaps(graph, position, kGroupedChain);
  graph.settle();
  auto plain = joined_without_groups(position, graph);
  if (is_weakened(kGroupedChain, Guard::kTrueSize)) plain.assign(plain.size(), std::vector<bool>(plain.size(), false));
  report_chains(kGroupedChain, graph, find_chains(graph, [&](int start, int end, int links) {
    return links >= 2 && !plain[static_cast<std::size_t>(start)][static_cast<std::size_t>(end)];
  }), sink);
}

}  // namespace cp::techniques
