// SPDX-License-Identifier: Apache-2.0
// Naked quad: four open cells of a house that can hold only four digits between them, so these leave the rest of the
// house. Not reported when fewer of the cells are tight already. With hidden triples and quads, nothing larger is needed
// on a 9x9 grid (a naked five is a hidden quad of the other digits); on 16x16 larger ones exist and are not looked for.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void naked_quad(const Position& position, StepSink& sink) { deduce::find_naked_subsets("naked-quad", 4, position, sink); }

}  // namespace cp::techniques
