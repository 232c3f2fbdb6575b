// SPDX-License-Identifier: Apache-2.0
// House forcing chain: the places of a digit in a house are supposed one after the other and naked and hidden singles are
// followed. What falls in every case is false.
//
// Sound: one of the places of the digit in the house is true.
// Cost: one round of singles for each candidate of the grid; then the houses compare what the places strike out.
// Does not find: houses with a place that comes to an impossibility (nishio strikes that one out first); what needs more
// than singles (forcing-net). What singles take away with nothing supposed is left to them. Each candidate that falls is
// a step of its own, told with the first of the houses with the fewest places; locked candidates are found here as well.
#include "deduce/detail/forcing.h"
#include "deduce/technique.h"

namespace cp::techniques {

void house_forcing_chain(const Position& position, StepSink& sink) {
  deduce::ForcingPlan plan;
  plan.technique = "house-forcing-chain";
  plan.splits_houses = true;
  find_forced(plan, position, sink);
}

}  // namespace cp::techniques
