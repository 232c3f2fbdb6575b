// SPDX-License-Identifier: Apache-2.0
// Why a step is right, in a form that a checker can replay. Sentences are made from it elsewhere (room speak).
#pragma once

#include <variant>

#include "step/argument_reason.h"
#include "step/balance_reason.h"
#include "step/constraint.h"
#include "step/linear_reason.h"

namespace cp {

// The constraint has one candidate left, so that candidate is true. (Full house, naked and hidden single.)
struct LoneReason {
  Constraint constraint;
};

using Reason = std::variant<LoneReason, LinearReason, ArgumentReason, BalanceReason>;

}  // namespace cp
