// SPDX-License-Identifier: Apache-2.0
// Why a step is right, in a form that a checker can replay. Sentences are made from it elsewhere (room speak).
#pragma once

#include <variant>
#include <vector>

#include "step/balance_reason.h"
#include "step/constraint.h"

namespace cp {

// The constraint has one candidate left, so that candidate is true. (Full house, naked and hidden single.)
struct LoneReason {
  Constraint constraint;
};

// Weighing constraints: add the exactly-one facts with whole-number multipliers. Each candidate then has a
// coefficient (the sum of the multipliers of the constraints it is in); with right = sum of all multipliers minus the
// coefficients of placed digits, the sum over true candidates of their coefficients is `right`. When no open
// candidate has a negative coefficient, every candidate whose coefficient exceeds `right` is false.
// A subset of size k: -1 for its k cells, +1 for its k digits in the house. A fish: -1 for the base lines, +1 for
// the cover lines of one digit. So negative multipliers are the bases, positive ones the covers.
struct LinearTerm {
  Constraint constraint;
  int multiplier = 0;
};
struct LinearReason {
  std::vector<LinearTerm> terms;
};

using Reason = std::variant<LoneReason, LinearReason, BalanceReason>;

}  // namespace cp
