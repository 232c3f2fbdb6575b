// SPDX-License-Identifier: Apache-2.0
#include "verify/step_check.h"

#include "verify/argument_check.h"
#include "verify/balance_check.h"
#include "verify/linear_check.h"

namespace cp {

CheckResult check_step(const Position& before, const Step& step) {
  if (step.placements.empty() && step.eliminations.empty()) return CheckResult::no("the step changes nothing");
  for (const Candidate& elimination : step.eliminations) {
    if (before.is_placed(elimination.cell) || !before.has(elimination)) return CheckResult::no("an elimination is not there to strike out");
  }
  if (const auto* lone = std::get_if<LoneReason>(&step.reason)) return check_lone(before, step, *lone);
  if (const auto* linear = std::get_if<LinearReason>(&step.reason)) return check_linear(before, step, *linear);
  if (const auto* argument = std::get_if<ArgumentReason>(&step.reason)) return check_argument(before, step, *argument);
  return check_balance(before, step, std::get<BalanceReason>(step.reason));
}

}  // namespace cp
