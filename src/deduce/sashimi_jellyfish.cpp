// SPDX-License-Identifier: Apache-2.0
// Sashimi jellyfish: a finned jellyfish that is no jellyfish without its fins, for one of its lines or crossing lines would keep only one
// place. It proves the same, for the same reason: if a candidate of the crossing lines in the fins' box were true, the
// fins would fall and four lines would have three left to share. Rows or columns as bases; steps go by digit. Each base
// line keeps a place at least, and so does each crossing line. It does not look at fins in several boxes.
#include "deduce/detail/finned_lines.h"
#include "deduce/technique.h"

namespace cp::techniques {

void sashimi_jellyfish(const Position& position, StepSink& sink) { deduce::find_finned_fish("sashimi-jellyfish", 4, deduce::FinKind::kSashimi, position, sink); }

}  // namespace cp::techniques
