// SPDX-License-Identifier: Apache-2.0
// Continuous loop: an alternating chain whose two ends see each other (or share a cell). One of them is true because of
// the chain, not both because of the sight. So of each weak link of the loop exactly one candidate is true, and all else
// that sees both of its candidates is false. Each weak link is a step of its own.
//
// Sound: with such a candidate true both ends of the weak link are false, but following the rest of the loop from the one
// makes the other true.
// Cost: as for the alternating chain.
// Does not find: loops through groups or locked sets (grouped-chain, set-chain find what they strike out). Loops of
// two strong links are left to naked and hidden pairs and X-wings. What several weak links strike out alike is said once.
#include "deduce/detail/chain_graph.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void continuous_loop(const Position& position, StepSink& sink) {
  constexpr std::string_view kContinuousLoop = "continuous-loop";
  ChainGraph graph(position);
  link_cells(graph, position, kContinuousLoop);
  link_houses(graph, position, kContinuousLoop);
  graph.settle();
  const int fewest = is_weakened(kContinuousLoop, Guard::kTrueSize) ? 2 : 3;
  report_chains(kContinuousLoop, graph, find_chains(graph, [&](int start, int end, int links) {
    return links >= fewest && graph.sees(start, end);
  }), sink);
}

}  // namespace cp::techniques
