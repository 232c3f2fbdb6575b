// SPDX-License-Identifier: Apache-2.0
#include "balance/exact_pan.h"

#include <gtest/gtest.h>

#include <numeric>
#include <vector>

#include "base/rng.h"

namespace cp {
namespace {

using Need = std::array<int, ExactPan::kDigits>;

// Tries digits for the cells from this one on; marks in `used` the candidates of every filling that is found.
bool fill(const std::vector<std::uint32_t>& cells, std::size_t at, Need& left, std::vector<std::uint32_t>& used) {
  if (at == cells.size()) return true;
  bool any = false;
  for (std::size_t digit = 0; digit < left.size(); ++digit) {
    if (((cells[at] >> digit) & 1U) == 0 || left[digit] == 0) continue;
    --left[digit];
    if (fill(cells, at + 1, left, used)) {
      any = true;
      used[at] |= 1U << digit;
    }
    ++left[digit];
  }
  return any;
}

bool speaks_by_trial(const std::vector<std::uint32_t>& cells, Need need) {
  if (static_cast<int>(cells.size()) != std::accumulate(need.begin(), need.end(), 0)) return true;
  std::vector<std::uint32_t> used(cells.size());
  return !fill(cells, 0, need, used) || used != cells;
}

bool speaks(const std::vector<std::uint32_t>& cells, const Need& need) {
  ExactPan pan;
  for (const std::uint32_t cell : cells) pan.add(cell);
  return pan.speaks(need);
}

TEST(ExactPan, SpeaksWhenAndOnlyWhenSomeCandidateIsInNoFilling) {
  Rng rng(20);
  int told = 0;
  int silent = 0;
  for (int round = 0; round < 20000; ++round) {
    const int digits = 1 + static_cast<int>(rng.below(ExactPan::kDigits));
    const int count = static_cast<int>(rng.below(8));
    Need need{};
    std::vector<std::uint32_t> cells;
    for (int i = 0; i < count; ++i) {
      // Most candidates come from copies that are there, so that fillings are frequent.
      const auto own = rng.below(static_cast<std::uint32_t>(digits));
      ++need[(own * 5) % need.size()];
      cells.push_back(1U << ((own * 5) % need.size()));
    }
    for (std::uint32_t& cell : cells) {
      for (std::size_t digit = 0; digit < need.size(); ++digit) {
        if (need[digit] > 0 ? rng.below(3) > 0 : rng.below(60) == 0) cell |= 1U << digit;
      }
    }
    if (rng.below(20) == 0) ++need[rng.below(ExactPan::kDigits)];
    const bool expected = speaks_by_trial(cells, need);
    ++(expected ? told : silent);
    ASSERT_EQ(speaks(cells, need), expected) << "round " << round;
  }
  EXPECT_GT(told, 3000);
  EXPECT_GT(silent, 3000);
}

TEST(ExactPan, SpeaksOfAPairOfCellsThatHoldAllCopies) {
  // Two cells take the only 1 and the only 2, so the third cell loses its 1.
  EXPECT_TRUE(speaks({0b011, 0b011, 0b101}, {1, 1, 1}));
  EXPECT_FALSE(speaks({0b011, 0b011, 0b100}, {1, 1, 1}));
  EXPECT_FALSE(speaks({0b111, 0b111, 0b111}, {1, 1, 1}));
}

TEST(ExactPan, SpeaksWhenItCannotBeFilled) {
  EXPECT_TRUE(speaks({0b001, 0b001, 0b110}, {1, 1, 1}));
  EXPECT_TRUE(speaks({0b000}, {1}));
  EXPECT_TRUE(speaks({0b001}, {2}));
  EXPECT_FALSE(speaks({}, {}));
}

}  // namespace
}  // namespace cp
