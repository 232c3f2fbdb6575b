// SPDX-License-Identifier: Apache-2.0
// Weighing exactly-one facts: the reason of locked candidates, subsets, fish, loops, and one line of an argument.
#pragma once

#include <vector>

#include "step/constraint.h"

namespace cp {

// Weighing constraints: add the exactly-one facts with whole-number multipliers. Each candidate then has a
// coefficient (the sum of the multipliers of the constraints it is in); with right = sum of all multipliers minus the
// coefficients of placed digits, the sum over true candidates of their coefficients is `right`. When no open
// candidate has a negative coefficient, every candidate whose coefficient exceeds `right` is false.
// A subset of size k: -1 for its k cells, +1 for its k digits in the house. A fish: -1 for the base lines, +1 for
// the cover lines of one digit. So negative multipliers are the bases, positive ones the covers.
struct LinearTerm {
  Constraint constraint;
  int multiplier = 0;

  friend constexpr bool operator==(const LinearTerm&, const LinearTerm&) = default;
};
struct LinearReason {
  std::vector<LinearTerm> terms;
};

}  // namespace cp
