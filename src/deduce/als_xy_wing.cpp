// SPDX-License-Identifier: Apache-2.0
// Three almost locked sets (ALS-XY-wing): the middle one shares X with the first and Y with the last, X and Y different, each
// so that only one of the two sets can hold it. Without Z the first holds X, so the middle holds Y, so the last loses Y and
// holds Z. So Z is in the first or the last set, and falls wherever all its cells in both are seen.
// Sets of up to four cells; first and last may overlap. Left to ALS-XZ: when two sets join the same cells for Z
// directly. Left to the doubly linked pair: the same cells for Z in the first and the last set.
#include "deduce/detail/set_walks.h"
#include "deduce/technique.h"

namespace cp::techniques {

void als_xy_wing(const Position& position, StepSink& sink) { deduce::find_set_walks("als-xy-wing", 3, 3, position, sink); }

}  // namespace cp::techniques
