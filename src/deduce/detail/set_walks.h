// SPDX-License-Identifier: Apache-2.0
// Walks from one almost locked set to the next. When a set has lost one digit, its other digits are locked in: each of
// them is somewhere in the set. If its cells for such a digit X see all cells for X of another set, that set loses X and
// is locked in turn. So: were Z nowhere in the first set, Z would be in the last; Z is in one of them.
//
// Not whole sets are joined but groups: the cells of a set for one digit. Whatever sets have the same group are alike in a
// walk, so walks between groups are found breadth first, each by the smallest sets. Sets of a walk may overlap.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "deduce/detail/almost_locked_sets.h"

namespace cp::deduce {

// Reports what walks of `fewest` to `most` sets strike out, when no shorter walk joins the two groups at its ends: shorter
// walks first. The ends are two groups, not one; those of two sets do not see each other (that is a double link).
void find_set_walks(std::string_view technique, int fewest, int most, const Position& position, StepSink& sink);

}  // namespace cp::deduce
