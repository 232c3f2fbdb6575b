// SPDX-License-Identifier: Apache-2.0
// Naked triple: three open cells of a house that can hold only three digits between them, so these leave the rest of
// the house. No cell need have all three. Not reported when one or two of the cells are tight already (a single or a
// pair): those do the work. Steps go by house, then cells.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void naked_triple(const Position& position, StepSink& sink) { deduce::find_naked_subsets("naked-triple", 3, position, sink); }

}  // namespace cp::techniques
