// SPDX-License-Identifier: Apache-2.0
// Why a balance proves something: the houses in the pans, the tally, and the case table. See docs/formats/step.md.
//
// Vocabulary (words.md): with integer weights on houses, W(cell) is the sum of the weights of its houses. Cells with
// W > 0 are the left remainder, W < 0 the right one, W = 0 have cancelled; |W| counts a cell several times. For each
// digit d: (copies in the left remainder) - (copies in the right) = surplus. After the known digits are taken out,
// the open left cells hold d exactly tally[d] times more often than the open right ones.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <vector>

#include "grid/cell.h"
#include "grid/digit_set.h"
#include "grid/shape.h"

namespace cp {

// One value per digit, by digit index. Entries beyond the side of the shape are 0.
using DigitCounts = std::array<int, kMaxSide>;

struct Weight {
  House house;
  int weight = 0;  // > 0: left pan, < 0: right pan; never 0

  friend constexpr auto operator<=>(const Weight&, const Weight&) = default;
};

enum class Pan : std::uint8_t { kLeft, kRight, kBoth };

// A share known beforehand: `houses` have no common place for `digit`, each has all its places for it among the open
// cells of `pan`, so the pan holds the digit at least houses.size() times. (Level 2.) With kBoth the copies may fall on
// either side; the tally fixes the difference, so half of what exceeds it (rounded up) is shared.
struct ForcedCopies {
  Digit digit;
  Pan pan = Pan::kLeft;
  std::vector<House> houses;
};

// One thing said inside a case. Both kinds start from the exact number of copies that the case gives each digit.
struct Lemma {
  enum class Kind : std::uint8_t {
    kCount,  // the digits `digits` need exactly (or more than) as many open cells of `pan` as can take any of them:
             // those cells hold nothing else (or the case is impossible)
    kCover,  // all places of the one digit in `pan` lie in `houses`, which are as many as the copies needed (or fewer):
             // each house has its copy there, so the digit leaves the rest of these houses (or the case is impossible)
    kSight,  // if a removed candidate were true, the places of the one digit in `pan` that it does not see would lie
             // in `houses`, fewer than the copies still needed (`houses` empty: it sees every place; the fin argument)
  };
  Kind kind = Kind::kCount;
  Pan pan = Pan::kLeft;
  DigitSet digits;               // for kCover and kSight: exactly one
  std::vector<House> houses;     // for kCover and kSight
  std::vector<Candidate> removed;  // ordered; empty when the lemma shows the case impossible
};

// One way the slack can be filled: shares[d] copies of digit d in both remainders.
struct ShareCase {
  DigitCounts shares{};
  std::vector<Lemma> lemmas;   // in the order in which they follow
  bool is_impossible = false;  // the last lemma breaks the case
};

struct BalanceReason {
  std::vector<Weight> weights;  // ordered by house
  int surplus = 0;              // sum of the weights
  int slack = 0;                // open left cells (with multiplicity) not forced by the tally
  DigitCounts tally{};
  int level = 0;                // 1 count, 2 forced share, 3 full house of digits, 4 cases, 5 everything
  std::vector<ForcedCopies> forced;  // what levels 2-4 rest on
  std::vector<ShareCase> cases;      // one at levels 1-3; at level 4 all for which each pan has enough places of each
                                     // digit; none at level 5 (exhaustive search)
};

}  // namespace cp
