// SPDX-License-Identifier: Apache-2.0
// Forcing net: the candidates of a cell, or the places of a digit in a house, are supposed one after the other; singles,
// locked candidates, naked and hidden pairs are followed. What falls in every case that stays possible is false.
//
// Sound: one of the candidates is true, and not one of an impossible case.
// Cost: one round of these rules for each candidate of the grid, so searched on grids up to 9x9 only.
// Does not find: cases inside cases; facts all of whose cases are impossible (the position is). What the same rules take away
// with nothing supposed is left to them. Nishio, cell and house forcing chains are found here as well. Each candidate that
// falls is a step of its own, told with the first of the facts with the fewest cases, cells before houses.
#include "deduce/detail/forcing.h"
#include "deduce/technique.h"

namespace cp::techniques {

void forcing_net(const Position& position, StepSink& sink) {
  if (position.shape().side() > 9) return;
  deduce::ForcingPlan plan;
  plan.technique = "forcing-net";
  plan.following = deduce::Following::kSinglesAndSmallSets;
  plan.splits_cells = plan.splits_houses = plan.counts_impossible = true;
  find_forced(plan, position, sink);
}

}  // namespace cp::techniques
