// SPDX-License-Identifier: Apache-2.0
// Two almost locked sets (ALS-XZ): the cells for X of one set all see those of the other, so only one of the sets can hold X.
// The one without X holds all its other digits, Z among them. So Z is in one of the sets, and falls wherever all its cells
// in both are seen. Reason: with Z supposed there, the cells of both sets have one digit too few.
// Sets of up to four cells; they may overlap where neither needs X. Left to the doubly linked pair: when the
// cells for Z of the two sets all see each other as well. Equal conclusions once, by the smallest sets.
#include "deduce/detail/set_walks.h"
#include "deduce/technique.h"

namespace cp::techniques {

void als_xz(const Position& position, StepSink& sink) { deduce::find_set_walks("als-xz", 2, 2, position, sink); }

}  // namespace cp::techniques
