// SPDX-License-Identifier: Apache-2.0
// Hidden pair: two digits that have only the same two places in a house. They fill those two cells, so every other digit
// leaves them. Both digits have both places; one place is a hidden single. Steps go by house, then digits.
#include "deduce/detail/locked_sets.h"
#include "deduce/technique.h"

namespace cp::techniques {

void hidden_pair(const Position& position, StepSink& sink) { deduce::find_hidden_subsets("hidden-pair", 2, position, sink); }

}  // namespace cp::techniques
