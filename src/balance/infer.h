// SPDX-License-Identifier: Apache-2.0
// What does a balance prove? The levels of reasoning, weakest first.
//   1 count: nothing is left over, so each pan holds only what the tally names
//   2 forced share: digits that must be shared anyway use the slack up; then as level 1
//   3 full house of digits: as 1 and 2, and then all lemmas (counts, covers, sight) to their fixpoint
//   4 cases: one or two copies are shared by an unknown digit; what falls in every case falls
//   5 everything: exact search over the open cells (balance/exhaustive.h)
#pragma once

#include <vector>

#include "balance/forced_shares.h"
#include "balance/weighing.h"

namespace cp {

inline constexpr int kMostFreeSlack = 2;  // level 4 tries every way to share this many copies
inline constexpr int kHighestLevel = 5;

// What one level proves. Only levels that prove more than the ones below are listed.
struct LevelResult {
  int level = 0;
  std::vector<Candidate> eliminations;  // ordered; everything this level proves, also what weaker ones do
  BalanceReason reason;                 // replayable, trimmed to the lemmas it needs
};

struct Inference {
  ForcedShares forced;
  int free_slack = 0;                // slack - forced.total
  bool is_impossible = false;        // the balance shows that the position has no solution
  bool is_complete = true;           // false: level 5 hit its node limit
  std::vector<LevelResult> levels;   // weakest first
};

// Works through the levels 1 .. highest. With `weakest_only` it stops at the first level that eliminates something.
// Precondition: weighing was made from this position.
Inference infer(const Position& position, const Weighing& weighing, int highest = kHighestLevel, bool weakest_only = false);

// Ways to share `free` more copies beyond the forced ones that leave enough places for each digit in each pan.
std::vector<DigitCounts> share_cases(const Position& position, const Weighing& weighing, const ForcedShares& forced, int free);

}  // namespace cp
