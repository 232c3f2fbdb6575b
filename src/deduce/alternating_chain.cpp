// SPDX-License-Identifier: Apache-2.0
// Alternating chain (AIC): candidates in a row, by turns false and true. Where one is false the next is true, because a
// cell has only these two candidates, or a house only these two places for the digit (strong link); where one is true
// the next is false, because it sees it or shares its cell (weak link). First and last link are strong, so one of the two
// ends is true. What sees both ends, or shares the cell with an end it does not see, is false.
//
// Sound: with such a candidate true both ends are false, but following the chain from the one makes the other true.
// Cost: a search in breadth over bit sets from each candidate that has a strong link.
// Does not find: places that act as a group (grouped-chain), locked sets (set-chain). Ends that see each other close a
// loop and are left to continuous-loop; ends joined by one strong link are left to locked candidates. Both ends may be the
// same candidate, which is then true. A chain may come to a cell twice; the shortest is told. Wings, turbot chains and XY-chains
// are found here as well. What several pairs of ends strike out alike is said once.
#include "deduce/detail/chain_graph.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void alternating_chain(const Position& position, StepSink& sink) {
  constexpr std::string_view kAlternatingChain = "alternating-chain";
  ChainGraph graph(position);
  link_cells(graph, position, kAlternatingChain);
  link_houses(graph, position, kAlternatingChain);
  graph.settle();
  report_chains(kAlternatingChain, graph, find_chains(graph, [&](int start, int end, int links) {
    return links >= 2 && !graph.sees(start, end);
  }), sink);
}

}  // namespace cp::techniques
