// SPDX-License-Identifier: Apache-2.0
// Replays an argument: suppositions, lines, cases (step/argument_reason.h).
#pragma once

#include "verify/step_check.h"

namespace cp {

// Supposing each elimination true is impossible, or every case strikes all of them out. Deadly patterns are judged by
// pattern_check.h; whether the puzzle has one solution is not judged here.
CheckResult check_argument(const Position& before, const Step& step, const ArgumentReason& reason);

}  // namespace cp
