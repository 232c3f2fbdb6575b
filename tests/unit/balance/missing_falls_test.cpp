// SPDX-License-Identifier: Apache-2.0
#include "balance/missing_falls.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "exact/backbone.h"
#include "support/random_balances.h"
#include "verify/step_check.h"

namespace cp {
namespace {

Position without(Position position, Candidate candidate) {
  position.eliminate(candidate);
  return position;
}

// Each change named makes the balance speak: its argument replays once the candidate is gone, and not before.
TEST(MissingFalls, ReplayOnceTheCandidateIsGone) {
  int named = 0;
  for (std::uint64_t seed = 1; seed <= 150; ++seed) {
    const Position position = support::sound_position(seed % 6 == 0 ? *find_shape("6x6") : standard_shape(), seed);
    Rng rng(seed);
    const Weighing weighing = weigh(position, support::random_weights(position.shape(), rng));
    const Inference inference = infer(position, weighing);
    for (const MissingFall& fall : missing_falls(position, weighing, inference, 3)) {
      ASSERT_TRUE(inference.levels.empty());
      const Step step{"balance", {}, fall.result.eliminations, fall.result.reason};
      const CheckResult after = check_step(without(position, fall.missing), step);
      EXPECT_TRUE(after.holds) << "seed " << seed << ": " << after.why;
      EXPECT_FALSE(check_step(position, step).holds) << "seed " << seed;
      EXPECT_GT(position.candidates(fall.missing.cell).size(), 1);
      ++named;
    }
  }
  EXPECT_GT(named, 10);
}

// The weakest level first; with a limit the first of all.
TEST(MissingFalls, AreSortedAndCut) {
  int lists = 0;
  for (std::uint64_t seed = 100; seed <= 200; ++seed) {
    const Position position = support::sound_position(standard_shape(), seed);
    Rng rng(seed);
    const Weighing weighing = weigh(position, support::random_weights(position.shape(), rng));
    const Inference inference = infer(position, weighing);
    const auto all = missing_falls(position, weighing, inference, 1000);
    const auto few = missing_falls(position, weighing, inference, 2);
    ASSERT_EQ(few.size(), std::min<std::size_t>(2, all.size()));
    for (std::size_t i = 0; i < few.size(); ++i) EXPECT_EQ(few[i].missing, all[i].missing);
    EXPECT_TRUE(std::is_sorted(all.begin(), all.end(), [](const MissingFall& a, const MissingFall& b) { return a.result.level < b.result.level; }));
    lists += all.empty() ? 0 : 1;
  }
  EXPECT_GT(lists, 1);
}

TEST(UnsureDigits, AreThoseWithFreeSlackAndRoom) {
  const Position empty(standard_shape());
  const auto weights = parse_pans(standard_shape(), "r1", "b1").value();
  const Weighing weighing = weigh(empty, weights);
  const Inference inference = infer(empty, weighing);
  EXPECT_EQ(inference.free_slack, 6);
  EXPECT_EQ(unsure_digits(empty, weighing, inference).size(), 9);
  EXPECT_TRUE(missing_falls(empty, weighing, inference, 5).empty()) << "six copies are free: no single candidate mends that";
}

}  // namespace
}  // namespace cp
