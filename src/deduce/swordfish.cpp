// SPDX-License-Identifier: Apache-2.0
// Swordfish: three parallel lines in which a digit can go only to three crossing lines between them, so it leaves the
// rest of those. No line need use all three. Not reported when one or two of the lines are tight already (a hidden
// single or an X-wing). No fins, no boxes. Steps go by digit, rows first.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void swordfish(const Position& position, StepSink& sink) { deduce::find_fish("swordfish", 3, position, sink); }

}  // namespace cp::techniques
