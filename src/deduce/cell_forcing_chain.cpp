// SPDX-License-Identifier: Apache-2.0
// Cell forcing chain: the candidates of a cell are supposed one after the other and naked and hidden singles are followed.
// What falls in every case is false.
//
// Sound: one of the candidates of the cell is true.
// Cost: one round of singles for each candidate of the grid; then the cells compare what their candidates strike out.
// Does not find: cells with a candidate that comes to an impossibility (nishio strikes that one out first); what needs more
// than singles (forcing-net). What singles take away with nothing supposed is left to them. Each candidate that falls is
// a step of its own, told with the first of the cells with the fewest candidates.
#include "deduce/detail/forcing.h"
#include "deduce/technique.h"

namespace cp::techniques {

void cell_forcing_chain(const Position& position, StepSink& sink) {
  deduce::ForcingPlan plan;
  plan.technique = "cell-forcing-chain";
  plan.splits_cells = true;
  find_forced(plan, position, sink);
}

}  // namespace cp::techniques
