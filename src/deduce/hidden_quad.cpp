// SPDX-License-Identifier: Apache-2.0
// Hidden quad: four digits that have only four places between them in a house, so every other digit leaves those cells.
// Not reported when fewer of the digits are tight already. Steps go by house, then digits.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void hidden_quad(const Position& position, StepSink& sink) { deduce::find_hidden_subsets("hidden-quad", 4, position, sink); }

}  // namespace cp::techniques
