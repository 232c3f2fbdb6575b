// SPDX-License-Identifier: Apache-2.0
// Jellyfish: four parallel lines in which a digit can go only to four crossing lines between them, so it leaves the
// rest of those. Not reported when fewer of the lines are tight already. On a 9x9 grid nothing larger is needed: a fish
// of five rows is one of at most four columns seen from the other side. Steps go by digit, rows first.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void jellyfish(const Position& position, StepSink& sink) { deduce::find_fish("jellyfish", 4, position, sink); }

}  // namespace cp::techniques
