// SPDX-License-Identifier: Apache-2.0
// Naked pair: two open cells of a house that can hold only the same two digits. Each takes one of them, so both digits
// leave the rest of the house. Both cells have both digits; a cell with one candidate is a naked single. A pair inside
// the overlap of two houses is one step for each house where it strikes something out. Steps go by house, then cells.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void naked_pair(const Position& position, StepSink& sink) { deduce::find_naked_subsets("naked-pair", 2, position, sink); }

}  // namespace cp::techniques
