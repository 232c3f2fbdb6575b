// SPDX-License-Identifier: Apache-2.0
// Level 5 against CaDiCaL; levels 1-4 against level 5; every result against the checker and against all solutions.
#include <gtest/gtest.h>

#include <algorithm>

#include "balance/exhaustive.h"
#include "balance/infer.h"
#include "exact/backbone.h"
#include "oracle/filling_oracle.h"
#include "support/random_balances.h"
#include "verify/step_check.h"

namespace cp {
namespace {

const Shape& shape_for(std::uint64_t seed) { return seed % 10 == 0 ? *find_shape("6x6") : seed % 10 == 1 ? *find_shape("4x4") : standard_shape(); }

// Does CaDiCaL agree with every verdict of level 5? Counts the candidates asked.
int compare_with_cadical(const Position& position, const Weighing& weighing, const Fillings& fillings) {
  oracle::FillingOracle oracle(position, weighing.weights);
  EXPECT_EQ(oracle.has_filling(), !fillings.is_impossible);
  if (fillings.is_impossible) return 0;
  int asked = 0;
  for (const Digit digit : position.shape().digits()) {
    for (const Cell cell : position.places(digit)) {
      const Candidate candidate{cell, digit};
      const bool fallen = std::binary_search(fillings.fallen.begin(), fillings.fallen.end(), candidate);
      const CellSet inside = position.places(digit) & oracle.cells();
      if (!inside.has(cell) && !inside.meets(position.shape().peers(cell))) {
        EXPECT_FALSE(fallen) << "nothing inside sees it";
        continue;
      }
      EXPECT_EQ(oracle.goes_with(candidate), !fallen) << position.shape().name_of(cell) << " " << digit.number();
      ++asked;
    }
  }
  return asked;
}

class Level5 : public testing::TestWithParam<int> {};

// 8 x 300 pairs of a random position and a random balance.
TEST_P(Level5, AgreesWithCadical) {
  int pairs = 0;
  int asked = 0;
  for (std::uint64_t seed = static_cast<std::uint64_t>(GetParam()) * 10'000; pairs < 300; ++seed) {
    Rng rng(seed);
    const Position position = support::sound_position(shape_for(seed), seed);
    const Weighing weighing = weigh(position, support::random_weights(position.shape(), rng));
    const Fillings fillings = all_fillings(position, weighing);
    if (!fillings.is_complete) continue;  // counted below: the limit may be hit by few
    asked += compare_with_cadical(position, weighing, fillings);
    ++pairs;
    ASSERT_FALSE(HasFailure()) << "seed " << seed;
    ASSERT_LT(seed, static_cast<std::uint64_t>(GetParam()) * 10'000 + 350) << "the node limit is hit too often";
  }
  RecordProperty("candidates_asked", asked);
}

INSTANTIATE_TEST_SUITE_P(Parts, Level5, testing::Range(1, 5));

class Levels : public testing::TestWithParam<int> {};

// Each level proves no more than level 5, which proves nothing false; each reason replays.
TEST_P(Levels, AreSoundAndReplay) {
  int results = 0;
  std::array<int, kHighestLevel + 1> by_level{};
  const auto first = static_cast<std::uint64_t>(GetParam()) * 100'000;
  for (std::uint64_t seed = first; seed < first + 350; ++seed) {
    const Position position = support::sound_position(shape_for(seed), seed);
    const Backbone truth = find_backbone(position);
    ASSERT_TRUE(truth.has_solution && truth.is_complete);
    Rng rng(seed);
    for (int i = 0; i < 6; ++i) {
      const Weighing weighing = weigh(position, support::random_weights(position.shape(), rng));
      const Inference inference = infer(position, weighing);
      ASSERT_FALSE(inference.is_impossible) << "seed " << seed;
      for (const LevelResult& result : inference.levels) {
        ++results;
        ++by_level[static_cast<std::size_t>(result.level)];
        const Step step{"balance", {}, result.eliminations, result.reason};
        const CheckResult checked = check_step(position, step);
        EXPECT_TRUE(checked.holds) << "seed " << seed << " level " << result.level << ": " << checked.why;
        for (const Candidate& elimination : result.eliminations) EXPECT_TRUE(truth.is_never(elimination)) << "seed " << seed;
        const auto& everything = inference.levels.back();
        if (inference.is_complete) {
          EXPECT_TRUE(std::includes(everything.eliminations.begin(), everything.eliminations.end(), result.eliminations.begin(), result.eliminations.end()))
              << "seed " << seed << " level " << result.level << " proves more than level " << everything.level;
        }
      }
      ASSERT_FALSE(HasFailure());
    }
  }
  for (int level = 1; level <= kHighestLevel; ++level) EXPECT_GT(by_level[static_cast<std::size_t>(level)], 0) << "level " << level << " never occurs";
  RecordProperty("results", results);
}

INSTANTIATE_TEST_SUITE_P(Parts, Levels, testing::Range(1, 3));

// Levels 1-4 also directly against CaDiCaL, without level 5 of our own in between.
TEST(Levels, OneToFourFallForCadicalToo) {
  int asked = 0;
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    const Position position = support::sound_position(standard_shape(), seed);
    Rng rng(seed + 9);
    const Weighing weighing = weigh(position, support::random_weights(position.shape(), rng));
    const Inference inference = infer(position, weighing, 4);
    if (inference.levels.empty()) continue;
    oracle::FillingOracle oracle(position, weighing.weights);
    for (const Candidate& elimination : inference.levels.back().eliminations) {
      EXPECT_FALSE(oracle.goes_with(elimination)) << "seed " << seed;
      ++asked;
    }
  }
  EXPECT_GT(asked, 200);
}

// A contradiction is noticed, never turned into eliminations that are believed.
TEST(Levels, SayImpossibleWhenAWrongDigitStandsInThePan) {
  int noticed = 0;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    Rng rng(seed);
    const FullGrid solution = random_grid(standard_shape(), seed);
    Position position = support::loosened_puzzle(solution, rng, 0, 40);
    const CellSet open = position.open();
    if (open.is_empty()) continue;
    const Cell cell = open.first();
    for (const Digit digit : position.candidates(cell) - DigitSet::of(solution.at(cell))) {
      position.place(cell, digit);
      const Inference inference = infer(position, weigh(position, support::random_weights(position.shape(), rng)));
      noticed += inference.is_impossible ? 1 : 0;
      break;
    }
  }
  EXPECT_GT(noticed, 5);
}

}  // namespace
}  // namespace cp
