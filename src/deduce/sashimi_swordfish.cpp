// SPDX-License-Identifier: Apache-2.0
// Sashimi swordfish: a finned swordfish that is no swordfish without its fins, for one of its lines or crossing lines would keep only one
// place. It proves the same, for the same reason: if a candidate of the crossing lines in the fins' box were true, the
// fins would fall and three lines would have two left to share. Rows or columns as bases; steps go by digit. Each base
// line keeps a place at least, and so does each crossing line. It does not look at fins in several boxes.
#include "deduce/detail/finned_lines.h"
#include "deduce/technique.h"

namespace cp::techniques {

void sashimi_swordfish(const Position& position, StepSink& sink) { deduce::find_finned_fish("sashimi-swordfish", 3, deduce::FinKind::kSashimi, position, sink); }

}  // namespace cp::techniques
