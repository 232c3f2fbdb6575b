// SPDX-License-Identifier: Apache-2.0
// The scenes that tell one balance, from the choice of houses to what falls.
#pragma once

#include <vector>

#include "lesson/document.h"
#include "step/step.h"

namespace cp {

// Precondition: the step's reason is a BalanceReason.
std::vector<Scene> balance_scenes(const Step& step, const Position& before);

// The houses of the two pans, each ordered; a house of weight 2 occurs twice.
struct BalanceSides {
  std::vector<House> left;
  std::vector<House> right;
};
BalanceSides balance_sides(const BalanceReason& reason);

}  // namespace cp
