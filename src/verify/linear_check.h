// SPDX-License-Identifier: Apache-2.0
// Replays the two elementary reasons: a lone candidate, and weighed constraints.
#pragma once

#include "verify/step_check.h"

namespace cp {

// The constraint has exactly one candidate left and the step places it, nothing else.
CheckResult check_lone(const Position& before, const Step& step, const LoneReason& reason);

// The weighed sum strikes out every elimination (step/reason.h has the argument).
CheckResult check_linear(const Position& before, const Step& step, const LinearReason& reason);

}  // namespace cp
