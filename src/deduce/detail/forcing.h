// SPDX-License-Identifier: Apache-2.0
// Cases that all come to the same: the candidates of a fact are supposed one after the other, and what falls in every case
// is false. Shared by the forcing techniques.
#pragma once

#include <string_view>

#include "deduce/detail/supposition.h"
#include "step/step.h"

namespace cp::deduce {

struct ForcingPlan {
  std::string_view technique;
  Following following = Following::kSingles;
  bool splits_cells = false;
  bool splits_houses = false;
  // False: a fact with a case that turns out impossible is passed over. True: such a case counts as refuted.
  bool counts_impossible = false;
};

// Each candidate that falls in all cases of some fact, once, told with the first fact of the fewest cases. Not those that
// fall with nothing supposed.
void find_forced(const ForcingPlan& plan, const Position& position, StepSink& sink);

}  // namespace cp::deduce
