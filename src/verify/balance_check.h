// SPDX-License-Identifier: Apache-2.0
// Replays a balance: re-adds the houses, re-counts the tally, and goes through the case table lemma by lemma.
#pragma once

#include "base/checked_int.h"
#include "verify/step_check.h"

namespace cp {

// What the houses say, worked out again from nothing but the weights.
struct Reweighed {
  std::array<int, kMaxCells> units{};  // weight of each open cell of the remainders (> 0 left, < 0 right), else 0
  DigitCounts tally{};
  int slack = 0;
};

// Adds the houses up; fails on overflow, on repeated or zero weights, or when the reason states other numbers.
CheckResult reweigh(const Position& before, const BalanceReason& reason, Reweighed& result);

// Levels 1-4 by the case table, level 5 by searching the fillings again (verify/filling_check.h).
CheckResult check_balance(const Position& before, const Step& step, const BalanceReason& reason);

}  // namespace cp
