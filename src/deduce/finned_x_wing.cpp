// SPDX-License-Identifier: Apache-2.0
// Finned X-wing: two parallel lines whose places for a digit lie in two crossing lines, apart from some more (fins) that all lie in one
// box; without the fins a whole X-wing is left, each of its lines with two places or more. If a candidate of the crossing lines
// in the fins' box were true, the fins would fall and two lines would have one left to share. Rows or columns as bases; steps go by digit. It does
// not look at fins in several boxes, nor at boxes as part of the fish.
#include "deduce/detail/finned_lines.h"
#include "deduce/technique.h"

namespace cp::techniques {

void finned_x_wing(const Position& position, StepSink& sink) { deduce::find_finned_fish("finned-x-wing", 2, deduce::FinKind::kFinned, position, sink); }

}  // namespace cp::techniques
