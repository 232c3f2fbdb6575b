// SPDX-License-Identifier: Apache-2.0
#include "path/path.h"

#include <gtest/gtest.h>

#include "deduce/basics.h"
#include "grid/notation.h"
#include "support/data_rows.h"
#include "verify/step_check.h"

namespace cp {
namespace {

TEST(Path, SolvesOrStopsHonestlyOnEveryPublishedPuzzle) {
  int solved = 0;
  int balances = 0;
  for (const auto& row : support::published_puzzles()) {
    const auto path = find_path(support::read(row.puzzle)).value();
    Position position = support::read(row.puzzle);
    for (const PathStep& step : path.steps) {
      EXPECT_EQ(step.before, position) << row.name;
      const CheckResult checked = check_step(position, step.step);
      EXPECT_TRUE(checked.holds) << row.name << " " << step.step.technique << ": " << checked.why;
      for (const Candidate& placed : step.step.placements) EXPECT_EQ(row.solution[placed.cell.index], Shape::name_of(placed.digit)) << row.name;
      for (const Candidate& fallen : step.step.eliminations) EXPECT_NE(row.solution[fallen.cell.index], Shape::name_of(fallen.digit)) << row.name;
      EXPECT_FALSE(step.text.empty());
      balances += step.step.technique == kBalanceId ? 1 : 0;
      apply(step.step, position);
    }
    EXPECT_EQ(position, path.end_position) << row.name;
    EXPECT_NE(path.end, PathEnd::kImpossible) << row.name;
    if (path.end == PathEnd::kSolved) {
      ++solved;
      EXPECT_EQ(to_line(position), row.solution) << row.name;
    }
  }
  EXPECT_GE(solved, 45);
  EXPECT_GT(balances, 0);
}

TEST(Path, TakesTheCheapestStepFirst) {
  const auto path = find_path(support::read(support::published_puzzle("gecode4"))).value();
  for (const PathStep& step : path.steps) {
    for (const Technique& technique : catalogue()) {
      if (technique.cost >= step.measure.cost) continue;
      FirstStep first;
      technique.find(step.before, first);
      if (!first.found) continue;
      EXPECT_GE(measure(first.first, step.before, &technique).cost, step.measure.cost) << technique.id << " was cheaper than " << step.step.technique;
    }
  }
}

TEST(Path, WithoutATechniqueNeverUsesIt) {
  const Position puzzle = support::read(support::published_puzzle("gecode5"));
  PathOptions options;
  options.without = {"pointing", "balance"};
  const auto path = find_path(puzzle, options).value();
  for (const PathStep& step : path.steps) {
    EXPECT_NE(step.step.technique, "pointing");
    EXPECT_NE(step.step.technique, kBalanceId);
  }
}

// With the basic families alone the path stops where run_basics does.
TEST(Path, WithTheBasicsAloneEndsAtTheirFixpoint) {
  PathOptions options;
  options.only = {"single", "locked", "subset", "fish"};
  for (const auto& row : support::published_puzzles()) {
    Position basics = support::read(row.puzzle);
    ASSERT_TRUE(run_basics(basics));
    const auto path = find_path(support::read(row.puzzle), options).value();
    EXPECT_EQ(path.end_position.candidate_count(), basics.candidate_count()) << row.name;
  }
}

TEST(Path, RefusesAnUnknownTechnique) {
  PathOptions options;
  options.without = {"x-wings"};
  const auto path = find_path(Position(standard_shape()), options);
  ASSERT_FALSE(path);
  EXPECT_EQ(path.error().code, ErrorCode::kBadName);
}

TEST(Path, SaysImpossibleWhenTheGivensClash) {
  Position position(standard_shape());
  position.place_given(Cell(0), Digit(0));
  position.place_given(Cell(1), Digit(0));
  EXPECT_EQ(find_path(position).value().end, PathEnd::kImpossible);
}

}  // namespace
}  // namespace cp
