// SPDX-License-Identifier: Apache-2.0
// Hidden triple: three digits that have only three places between them in a house, so every other digit leaves those
// cells. No digit need have all three. Not reported when one or two of the digits are tight already. Steps go by house,
// then digits.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void hidden_triple(const Position& position, StepSink& sink) { deduce::find_hidden_subsets("hidden-triple", 3, position, sink); }

}  // namespace cp::techniques
