// SPDX-License-Identifier: Apache-2.0
// Does the reason of a step carry it? Written from the description in docs/formats/step.md, for lone and linear reasons.
#pragma once

#include <string>

#include "step/step.h"

namespace cp::oracle {

// Empty when the step is in order: what it changes is there to be changed, in order and once, and follows from the
// reason by adding up. Otherwise a sentence on what is wrong. Balance reasons are not handled and say so.
std::string replay_fault(const Position& position, const Step& step);

}  // namespace cp::oracle
