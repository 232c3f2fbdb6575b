// SPDX-License-Identifier: Apache-2.0
// survey, needed and alternatives: what they say is compared with the solution, with check_step and with one another.
#include <gtest/gtest.h>

#include <algorithm>

#include "deduce/basics.h"
#include "grid/notation.h"
#include "path/alternatives.h"
#include "path/needed.h"
#include "path/survey.h"
#include "support/data_rows.h"
#include "verify/step_check.h"

namespace cp {
namespace {

Position demo() { return support::read("65.....4324.....86..3..........9......2.63..5...8.2........8...72.....9198..4..57"); }
Position demo_after_basics() {
  Position position = demo();
  EXPECT_TRUE(run_basics(position));
  return position;
}

TEST(Survey, ListsEveryStepOfEveryTechnique) {
  const Position position = support::read(support::published_puzzle("gecode5"));
  const Survey found = survey(position, select_techniques({}, {"balance"}).value());
  EXPECT_TRUE(found.balances.empty());
  for (const Technique& technique : catalogue()) {
    StepList all;
    technique.find(position, all);
    const auto places = std::find_if(found.places.begin(), found.places.end(), [&](const TechniquePlaces& each) { return each.technique == &technique; });
    ASSERT_EQ(places != found.places.end(), !all.steps.empty()) << technique.id;
    if (places == found.places.end()) continue;
    EXPECT_EQ(places->steps.size(), std::min<std::size_t>(all.steps.size(), kMostPlaces)) << technique.id;
  }
}

TEST(Survey, FindsTheBalancesOfTheDemo) {
  const Survey found = survey(demo_after_basics(), select_techniques({"balance"}, {}).value(), {1, 3});
  EXPECT_TRUE(found.places.empty());
  EXPECT_EQ(found.balances.size(), 3U);
}

// Each near miss says what is in the way: with it gone the step holds, and before it was not there.
TEST(Survey, NearMissesAreOneCandidateAway) {
  const Position position = demo_after_basics();
  std::vector<Candidate> all;
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) all.push_back({cell, digit});
  }
  const Technique& swordfish = **find_technique("swordfish");
  const std::vector<NearMiss> near = near_misses(position, swordfish, all, 4);
  ASSERT_FALSE(near.empty());
  EXPECT_LE(near.size(), 4U);
  for (const NearMiss& miss : near) {
    EXPECT_FALSE(check_step(position, miss.step).holds);
    Position without = position;
    ASSERT_TRUE(without.eliminate(miss.missing));
    EXPECT_TRUE(check_step(without, miss.step).holds);
  }
  EXPECT_TRUE(near_misses(position, swordfish, {}, 4).empty());
}

TEST(Needed, ABalanceIsNeededWhereOnlyBasicsAreAllowedBesides) {
  std::vector<std::string> others;
  const Selection basics = select_techniques({"single", "locked", "subset", "fish"}, {}).value();
  for (const Technique& technique : catalogue()) {
    if (!basics.has(technique.id)) others.emplace_back(technique.id);
  }
  const Needed found = is_needed(demo(), {{"balance"}, others, 1}).value();
  EXPECT_EQ(found.answer, Needed::Answer::kYes);
  EXPECT_TRUE(found.is_used);
  EXPECT_EQ(found.with.end, PathEnd::kSolved);
  EXPECT_EQ(found.without.end, PathEnd::kStuck);
  EXPECT_EQ(found.orders, 2);
}

TEST(Needed, APathThatAvoidsItIsShownAndReplays) {
  const Position puzzle = support::read(support::published_puzzle("gecode2"));
  const Needed found = is_needed(puzzle, {{"naked-single", "fish"}, {}, 1}).value();
  ASSERT_EQ(found.answer, Needed::Answer::kNo);
  for (const PathStep& step : found.without.steps) {
    EXPECT_NE(step.step.technique, "naked-single");
    EXPECT_TRUE(check_step(step.before, step.step).holds);
  }
  EXPECT_EQ(found.without.end, PathEnd::kSolved);
}

TEST(Needed, IsOpenWhereNothingSolves) {
  const Position puzzle(standard_shape());
  const Needed found = is_needed(puzzle, {{"x-wing"}, {"balance"}, 1}).value();
  EXPECT_NE(found.answer, Needed::Answer::kNo);
}

TEST(Needed, RefusesUnknownNames) { EXPECT_FALSE(is_needed(demo(), {{"y-wing"}, {}, 1}).is_ok()); }

TEST(Alternatives, AllProveTheSameCheapestFirst) {
  const Position position = demo_after_basics();
  const auto best = balance_step(position, 1);
  ASSERT_TRUE(best);
  const Candidate target = best->step.eliminations.front();
  const Alternatives found = alternatives(position, target, whole_catalogue(), {1, 0});
  ASSERT_FALSE(found.steps.empty());
  EXPECT_EQ(found.found, found.steps.size());
  int balances = 0;
  int cost = 0;
  for (const PathStep& step : found.steps) {
    EXPECT_TRUE(check_step(position, step.step).holds) << step.step.technique;
    EXPECT_TRUE(std::find(step.step.eliminations.begin(), step.step.eliminations.end(), target) != step.step.eliminations.end()) << step.step.technique;
    EXPECT_LE(cost, step.measure.cost);
    cost = step.measure.cost;
    balances += step.step.technique == kBalanceId ? 1 : 0;
  }
  EXPECT_GT(balances, 0);
}

// Exactly the steps of the catalogue that strike it out, none lost.
TEST(Alternatives, AreAllInstancesOfTheCatalogue) {
  const Position position = support::read(support::published_puzzle("gecode8"));
  const Selection catalogue_only = select_techniques({}, {"balance"}).value();
  for (const Cell cell : {Cell(1), Cell(5), Cell(40)}) {
    if (position.is_placed(cell)) continue;
    const Candidate target{cell, position.candidates(cell).lowest()};
    std::size_t wanted = 0;
    for (const Technique& technique : catalogue()) {
      StepList all;
      technique.find(position, all);
      for (const Step& step : all.steps) {
        Position after = position;
        apply(step, after);
        wanted += after.candidates(cell).has(target.digit) ? 0U : 1U;
      }
    }
    EXPECT_EQ(alternatives(position, target, catalogue_only, {1, 0}).found, wanted) << cell.index;
  }
}

// Balances come ranked by the finder, where the layout counts for up to kMostHint.
TEST(Alternatives, ALimitKeepsTheCheapest) {
  const Position position = demo_after_basics();
  const Candidate target = balance_step(position, 1)->step.eliminations.front();
  const Alternatives all = alternatives(position, target, whole_catalogue(), {1, 0});
  const Alternatives one = alternatives(position, target, whole_catalogue(), {1, 1});
  ASSERT_EQ(one.steps.size(), 1U);
  EXPECT_LE(one.steps[0].measure.cost, all.steps[0].measure.cost + 3 * kMostHint);
}

}  // namespace
}  // namespace cp
