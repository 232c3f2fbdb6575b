// SPDX-License-Identifier: Apache-2.0
// Is this proof sound? Replays the reason of a step with checked integers. TRUSTED: written to be read, shares no
// code with the rooms that find steps, and knows nothing of the solution.
#pragma once

#include <string>

#include "step/step.h"

namespace cp {

// `why` says what failed, for a programmer; empty when the step holds.
struct [[nodiscard]] CheckResult {
  bool holds = false;
  std::string why;

  static CheckResult yes() { return {true, {}}; }
  static CheckResult no(std::string why) { return {false, std::move(why)}; }
};

// Does the reason prove every placement and elimination of the step at this position?
// A step that changes nothing, or strikes out what is not there, does not hold.
CheckResult check_step(const Position& before, const Step& step);

}  // namespace cp
