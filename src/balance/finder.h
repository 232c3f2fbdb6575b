// SPDX-License-Identifier: Apache-2.0
// Which houses to weigh against which? Looks at all balances of non-overlapping houses and ranks those that prove
// something by what a person must hold in the head.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "balance/distinct.h"
#include "balance/infer.h"
#include "balance/kept_balances.h"
#include "balance/load.h"

namespace cp {

inline constexpr int kMostRawSlack = 4;  // balances whose tally leaves more cells open than this are not looked at

struct FinderOptions {
  int most_free_slack = 1;   // 0 .. kMostFreeSlack
  int highest_level = 4;     // 1 .. 4
  std::size_t limit = 20;    // the best so many; 0: all
  int most_raw_slack = kMostRawSlack;  // 0 .. kMostRawSlack: fewer balances are looked at, in less time
  int most_houses = kAnyHouses;  // only balances named with so few houses: a quick first look
  std::optional<Candidate> target = std::nullopt;  // only balances that strike this out, each at the weakest level that does
};

struct FoundBalance {
  Weighing weighing;
  int free_slack = 0;
  LevelResult result;  // the weakest level that eliminates something
  Load load;
  Pointing pointing;
};

struct FinderResult {
  std::vector<FoundBalance> balances;  // best first (rank_key, then houses in order)
  std::uint64_t scanned = 0;           // pairs of sides covered
  std::uint64_t distinct = 0;          // balances with different open cells within the raw slack
  std::uint64_t examined = 0;          // of those, worked through; the rest could not rank among the best
  bool is_impossible = false;          // some balance shows that the position has no solution
};

// The result does not depend on the order in which balances are met: examining stops only when nothing further can
// rank among the best `limit`. Balances that are the sum of two smaller ones of the same position are left out, unless
// nothing else is there; with `most_houses`, of two that have so few houses as well. Precondition: the side of the shape is at most 9 (can_find()).
FinderResult find_balances(const Position& position, const FinderOptions& options);

// The same answer; quicker when the last search with the same `kept` was of a position with the same digits placed.
FinderResult find_balances(const Position& position, const FinderOptions& options, KeptBalances& kept);

// True when the finder can scan this shape (up to 9x9).
bool can_find(const Shape& shape);

}  // namespace cp
