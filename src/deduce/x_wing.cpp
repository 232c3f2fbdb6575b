// SPDX-License-Identifier: Apache-2.0
// X-wing: two parallel lines in which a digit can go only to the same two crossing lines. The two lines need it twice, in
// different crossing lines, so it leaves the rest of those. Rows or columns as bases. Steps go by digit, rows first.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void x_wing(const Position& position, StepSink& sink) { deduce::find_fish("x-wing", 2, position, sink); }

}  // namespace cp::techniques
