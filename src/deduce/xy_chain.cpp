// SPDX-License-Identifier: Apache-2.0
// XY-chain: cells with two candidates, each seeing the next and sharing the digit with it that the chain hands on. If the
// first cell does not hold z, the chain makes the last one hold z. So z leaves every cell that sees both ends.
//
// Sound: with z in such a cell, the first cell holds its other digit, that drives the next cell to its other digit, and
// so on; nothing is left for the last one.
// Cost: a search in breadth from each candidate of the cells with two candidates.
// Does not find: ways over houses with two places (alternating-chain). Ends that three cells or fewer join are left to
// naked pairs and XY-wings. A chain may come to a cell twice; the shortest is told. What several pairs of ends strike out
// alike is said once.
#include "deduce/detail/chain_graph.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void xy_chain(const Position& position, StepSink& sink) {
  constexpr std::string_view kXyChain = "xy-chain";
  ChainGraph graph(position);
  link_cells(graph, position, kXyChain);
  graph.settle();
  const int fewest = is_weakened(kXyChain, Guard::kTrueSize) ? 2 : 4;
  report_chains(kXyChain, graph, find_chains(graph, [&](int start, int end, int links) {
    return start != end && links >= fewest && graph.at(start).digit == graph.at(end).digit;
  }), sink);
}

}  // namespace cp::techniques
