// SPDX-License-Identifier: Apache-2.0
#include "base/rng.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <vector>

namespace cp {
namespace {

TEST(Rng, GivesThePublishedSequenceOfSplitMix64) {
  // The first outputs for seed 1234567 as printed with the public-domain reference code of S. Vigna (from memory).
  Rng rng(1234567);
  for (const std::uint64_t expected : {6457827717110365317ULL, 3203168211198807973ULL, 9817491932198370423ULL, 4593380528125082431ULL, 16408922859458223821ULL}) {
    EXPECT_EQ(rng.next(), expected);
  }
}

TEST(Rng, GivesTheSameSequenceForTheSameSeed) {
  Rng first(7);
  Rng second(7);
  Rng other(8);
  EXPECT_EQ(first.next(), second.next());
  EXPECT_NE(first.next(), other.next());
}

TEST(Rng, StaysBelowTheBoundAndReachesEveryNumber) {
  Rng rng(3);
  std::array<int, 9> seen{};
  for (int i = 0; i < 9000; ++i) {
    const auto number = rng.below(9);
    ASSERT_LT(number, 9U);
    ++seen[number];
  }
  for (const int count : seen) EXPECT_NEAR(count, 1000, 150);  // five standard deviations
}

TEST(Rng, ShufflesWithoutLosingAnything) {
  std::vector<int> items = {1, 2, 3, 4, 5, 6, 7, 8};
  const std::vector<int> before = items;
  Rng rng(11);
  rng.shuffle(items);
  EXPECT_NE(items, before);
  std::sort(items.begin(), items.end());
  EXPECT_EQ(items, before);
}

TEST(Rng, ReachesEveryOrderOfThreeAboutEquallyOften) {
  std::array<int, 6> seen{};
  Rng rng(5);
  for (int i = 0; i < 6000; ++i) {
    std::array<int, 3> items = {0, 1, 2};
    rng.shuffle(items);
    ++seen[static_cast<std::size_t>(items[0] * 2 + (items[1] > items[2] ? 1 : 0))];
  }
  for (const int count : seen) EXPECT_NEAR(count, 1000, 150);
}

}  // namespace
}  // namespace cp
