// SPDX-License-Identifier: Apache-2.0
// Finned jellyfish: four parallel lines whose places for a digit lie in four crossing lines, apart from some more (fins) that all lie in one
// box; without the fins a whole jellyfish is left, each of its lines with two places or more. If a candidate of the crossing lines
// in the fins' box were true, the fins would fall and four lines would have three left to share. Rows or columns as bases; steps go by digit. It does
// not look at fins in several boxes, nor at boxes as part of the fish.
#include "deduce/detail/finned_lines.h"
#include "deduce/technique.h"

namespace cp::techniques {

void finned_jellyfish(const Position& position, StepSink& sink) { deduce::find_finned_fish("finned-jellyfish", 4, deduce::FinKind::kFinned, position, sink); }

}  // namespace cp::techniques
