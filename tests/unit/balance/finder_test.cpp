// SPDX-License-Identifier: Apache-2.0
#include "balance/finder.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "balance/distinct.h"
#include "balance/quick_look.h"
#include "support/data_rows.h"
#include "support/random_balances.h"
#include "verify/step_check.h"

namespace cp {
namespace {

std::vector<Weight> weights_of(const DistinctBalance& balance) {
  std::vector<Weight> weights;
  for (int house = 0; house < 32; ++house) {
    if (((balance.left_houses >> house) & 1U) != 0) weights.push_back({House(house), 1});
    if (((balance.right_houses >> house) & 1U) != 0) weights.push_back({House(house), -1});
  }
  return weights;
}

using OpenCells = std::pair<TwoWords, TwoWords>;

// Every pair of sides, weighed one by one the long way, with no classes and no complements.
std::map<OpenCells, int> all_pairs(const Position& position, int most_slack) {
  std::map<OpenCells, int> found;
  const auto rights = right_sides(position);
  for (const Side& left : left_sides(position)) {
    for (const Side& right : rights) {
      const TwoWords open_left = left.open - right.open;
      const TwoWords open_right = right.open - left.open;
      if ((open_left | open_right).is_empty()) continue;
      int slack = open_left.size();
      for (const Digit digit : position.shape().digits()) slack -= std::max(0, right.known[digit.index] - left.known[digit.index]);
      if (slack > most_slack) continue;
      found.try_emplace(open_right < open_left ? OpenCells{open_right, open_left} : OpenCells{open_left, open_right}, slack);
    }
  }
  return found;
}

TEST(Sides, AreFourteenChoicesABandOnNineByNine) {
  const Position empty(standard_shape());
  EXPECT_EQ(left_sides(empty).size(), 2744U);
  EXPECT_EQ(right_sides(empty).size(), 2744U);
  EXPECT_EQ(left_sides(Position(*find_shape("6x6"))).size(), 216U);   // 3 bands of 2 rows and 2 boxes: 6 choices each
  EXPECT_EQ(right_sides(Position(*find_shape("6x6"))).size(), 196U);  // 2 stacks of 3 columns and 3 boxes: 14 each
}

class Distinct : public testing::TestWithParam<std::string> {};

TEST_P(Distinct, BalancesAreThoseOfAllPairs) {
  const Shape& shape = *find_shape(GetParam());
  std::uint64_t seed = 100;
  for (int round = 0; round < 2; ++round) {
    const Position position = support::sound_position(shape, seed++);
    const DistinctBalances distinct(position, 4);
    std::map<OpenCells, int> seen;
    for (const DistinctBalance& balance : distinct.all()) {
      EXPECT_TRUE(seen.try_emplace({balance.left, balance.right}, balance.slack).second) << "the same cells twice";
      const Weighing weighing = weigh(position, weights_of(balance));
      EXPECT_EQ(two_words(weighing.open_left), balance.left);
      EXPECT_EQ(two_words(weighing.open_right), balance.right);
      EXPECT_EQ(weighing.slack, balance.slack);
      ASSERT_FALSE(HasFailure());
    }
    EXPECT_EQ(seen, all_pairs(position, 4));
  }
}

INSTANTIATE_TEST_SUITE_P(Shapes, Distinct, testing::Values("4x4", "6x6", "9x9"));

// The fast test may let through what says nothing, but must not turn away what does.
TEST(QuickLook, TurnsNothingAwayThatProvesSomething) {
  std::uint64_t seed = 500;
  int fired = 0;
  int let_through = 0;
  int examined = 0;
  for (int round = 0; round < 12; ++round) {
    const Position position = round % 3 == 0 ? support::sound_position(standard_shape(), seed++) : support::stuck_position(standard_shape(), seed);
    const DistinctBalances distinct(position, 4);
    QuickLook quick_look(position);
    const std::size_t step = 1 + distinct.all().size() / 1500;
    for (std::size_t i = 0; i < distinct.all().size(); i += step) {
      const DistinctBalance& balance = distinct.all()[i];
      const QuickLook::Answer answer = quick_look.look(balance, 1);
      const Inference inference = infer(position, weigh(position, weights_of(balance)), 4, true);
      EXPECT_EQ(answer.free_slack, inference.free_slack);
      const bool fires = inference.free_slack <= 1 && !inference.levels.empty();
      if (fires) {
        EXPECT_TRUE(answer.may_say);
        EXPECT_EQ(answer.forced_digits, static_cast<int>(inference.levels[0].reason.forced.size()));
        EXPECT_EQ(answer.cases, static_cast<int>(inference.levels[0].reason.cases.size()));
      }
      ++examined;
      fired += fires ? 1 : 0;
      let_through += answer.may_say ? 1 : 0;
      ASSERT_FALSE(HasFailure()) << "round " << round;
    }
  }
  EXPECT_GT(fired, 100);
  EXPECT_LT(let_through, examined) << "a test that lets everything through is none";
}

// The best few are the first of all: stopping early changes nothing.
TEST(Finder, GivesTheSameBestFewHoweverManyAreAskedFor) {
  std::uint64_t seed = 900;
  for (int round = 0; round < 3; ++round) {
    const Position position = support::stuck_position(*find_shape(round == 0 ? "6x6" : "9x9"), seed);
    FinderOptions all;
    all.limit = 200;
    FinderOptions few;
    few.limit = 5;
    const FinderResult many = find_balances(position, all);
    const FinderResult best = find_balances(position, few);
    ASSERT_EQ(best.balances.size(), std::min<std::size_t>(5, many.balances.size()));
    for (std::size_t i = 0; i < best.balances.size(); ++i) {
      EXPECT_EQ(best.balances[i].weighing.weights, many.balances[i].weighing.weights);
      EXPECT_EQ(best.balances[i].result.eliminations, many.balances[i].result.eliminations);
    }
  }
}

// A search bounded in houses finds the same balances as the whole one that have so few, by the same names.
TEST(Distinct, BoundedInHousesAreThoseOfTheWholeWithSoFew) {
  std::uint64_t seed = 950;
  for (int round = 0; round < 4; ++round) {
    const Position position = support::stuck_position(*find_shape(round == 0 ? "6x6" : "9x9"), seed);
    const int most_houses = 3 + round;
    const auto names = [&](const DistinctBalances& balances) {
      std::set<std::vector<Weight>> all;
      for (const DistinctBalance& balance : balances.all()) {
        if (balance.house_count <= most_houses) all.insert(weights_of(balance));
      }
      return all;
    };
    const DistinctBalances few(position, kMostRawSlack, most_houses);
    EXPECT_EQ(names(few), names(DistinctBalances(position, kMostRawSlack)));
    EXPECT_EQ(names(few).size(), few.all().size()) << "none has more";
    EXPECT_GT(few.all().size(), 20U);
  }
}

// No balance of the list is the sum of two smaller ones (looked for the plain way).
// What is kept from one search must not reach another that weighs something else.
TEST(Finder, AnswersTheSameWithWhatIsKept) {
  std::uint64_t seed = 1300;
  const Position first = support::stuck_position(standard_shape(), seed);
  Position fewer_candidates = first;
  const Cell cell = first.open().first();
  const Digit digit = *first.candidates(cell).begin();
  fewer_candidates.eliminate({cell, digit});
  Position one_more_digit = first;
  one_more_digit.place(cell, digit);
  const Position other_shape = support::stuck_position(*find_shape("6x6"), seed);
  FinderOptions options;
  options.limit = 3;
  options.most_free_slack = 0;
  options.most_raw_slack = 0;
  FinderOptions few_houses = options;
  few_houses.most_houses = 4;
  KeptBalances kept;
  for (const Position& position : {first, fewer_candidates, one_more_digit, first, other_shape, fewer_candidates}) {
    for (const FinderOptions& wish : {options, few_houses}) {
      const FinderResult plain = find_balances(position, wish);
      const FinderResult quick = find_balances(position, wish, kept);
      EXPECT_EQ(quick.distinct, plain.distinct);
      EXPECT_EQ(quick.examined, plain.examined);
      EXPECT_EQ(quick.is_impossible, plain.is_impossible);
      ASSERT_EQ(quick.balances.size(), plain.balances.size());
      for (std::size_t i = 0; i < plain.balances.size(); ++i) {
        EXPECT_EQ(quick.balances[i].weighing.weights, plain.balances[i].weighing.weights);
        EXPECT_EQ(quick.balances[i].result.eliminations, plain.balances[i].result.eliminations);
      }
    }
  }
  // Only candidates differ: the pairs are not weighed again.
  const int weighed = kept.weighed();
  kept.of(fewer_candidates, 0, few_houses.most_houses);
  kept.of(first, 0, few_houses.most_houses);
  EXPECT_EQ(kept.weighed(), weighed);
  kept.of(one_more_digit, 0, few_houses.most_houses);
  EXPECT_EQ(kept.weighed(), weighed + 1);
}

TEST(Finder, ListsNoSums) {
  std::uint64_t seed = 40;
  const Position position = support::stuck_position(standard_shape(), seed);
  const auto pairs = all_pairs(position, 4);
  FinderOptions options;
  options.limit = 10;
  for (const FoundBalance& found : find_balances(position, options).balances) {
    const TwoWords left = two_words(found.weighing.open_left);
    const TwoWords right = two_words(found.weighing.open_right);
    for (const auto& [cells, slack] : pairs) {
      for (const auto& [part_left, part_right] : {cells, OpenCells{cells.second, cells.first}}) {
        if (!(part_left - left).is_empty() || !(part_right - right).is_empty()) continue;
        if (part_left == left && part_right == right) continue;
        const TwoWords rest_left = left - part_left;
        const TwoWords rest_right = right - part_right;
        EXPECT_EQ(pairs.count({std::min(rest_left, rest_right), std::max(rest_left, rest_right)}), 0U);
      }
    }
  }
}

TEST(Finder, EveryBalanceReplaysAndKeepsTheSolution) {
  int checked = 0;
  for (const auto& row : support::published_puzzles()) {
    Position position = support::read(row.puzzle);
    if (!run_basics(position) || position.is_complete()) continue;
    const FinderResult result = find_balances(position, {});
    EXPECT_FALSE(result.is_impossible) << row.name;
    for (const FoundBalance& found : result.balances) {
      const Step step{"balance", {}, found.result.eliminations, found.result.reason};
      const CheckResult check = check_step(position, step);
      EXPECT_TRUE(check.holds) << row.name << ": " << check.why;
      for (const Candidate& elimination : found.result.eliminations) {
        EXPECT_NE(row.solution[elimination.cell.index], Shape::name_of(elimination.digit)) << row.name;
        ++checked;
      }
    }
  }
  EXPECT_GT(checked, 500);
}

// The mirror image of a position: as many distinct balances, and each found balance proves the mirror image.
TEST(Finder, SeesTheSameInTheTransposedGrid) {
  std::uint64_t seed = 60;
  const Shape& shape = standard_shape();
  const auto mirrored = [&](Cell cell) { return shape.cell_at(shape.column_of(cell), shape.row_of(cell)); };
  const auto mirrored_house = [&](House house) {
    const int number = shape.number(house);
    if (shape.kind(house) == HouseKind::kBox) return shape.box(3 * (number % 3) + number / 3);
    return shape.kind(house) == HouseKind::kRow ? shape.column(number) : shape.row(number);
  };
  for (int round = 0; round < 3; ++round) {
    const Position position = support::stuck_position(shape, seed);
    Position transposed(shape);
    for (const Cell cell : position.placed()) {
      if (position.givens().has(cell)) transposed.place_given(mirrored(cell), *position.digit_at(cell));
      else transposed.place(mirrored(cell), *position.digit_at(cell));
    }
    for (const Cell cell : position.open()) {
      for (const Digit digit : transposed.candidates(mirrored(cell)) - position.candidates(cell)) transposed.eliminate({mirrored(cell), digit});
    }
    const FinderResult here = find_balances(position, {});
    EXPECT_EQ(here.distinct, DistinctBalances(transposed, kMostRawSlack).all().size());
    for (const FoundBalance& found : here.balances) {
      std::vector<Weight> weights;
      for (const auto& [house, weight] : found.weighing.weights) weights.push_back({mirrored_house(house), weight});
      std::vector<Candidate> expected;
      for (const Candidate& candidate : found.result.eliminations) expected.push_back({mirrored(candidate.cell), candidate.digit});
      std::sort(expected.begin(), expected.end());
      const Inference there = infer(transposed, weigh(transposed, weights), 4, true);
      ASSERT_EQ(there.levels.size(), 1U);
      EXPECT_EQ(there.levels[0].level, found.result.level);
      EXPECT_EQ(there.levels[0].eliminations, expected);
    }
  }
}

}  // namespace
}  // namespace cp
