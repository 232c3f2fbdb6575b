// SPDX-License-Identifier: Apache-2.0
#include "path/measure.h"

#include <gtest/gtest.h>

#include "path/path.h"
#include "support/data_rows.h"

namespace cp {
namespace {

const Technique& technique(std::string_view id) { return **find_technique(id); }

Step first_step(std::string_view id, const Position& position) {
  FirstStep first;
  technique(id).find(position, first);
  EXPECT_TRUE(first.found) << id;
  return first.first;
}

// Two cells of row 1 with 3 and 7: four facts in one house.
TEST(Measure, CountsWhatANakedPairUses) {
  Position position(standard_shape());
  for (const Cell cell : {Cell(0), Cell(4)}) {
    for (const Digit digit : standard_shape().digits()) {
      if (digit.number() != 3 && digit.number() != 7) position.eliminate({cell, digit});
    }
  }
  const Measure found = measure(first_step("naked-pair", position), position, &technique("naked-pair"));
  EXPECT_EQ(found.facts, 4);
  EXPECT_EQ(found.houses, 1);
  EXPECT_EQ(found.digits, 2);
  EXPECT_EQ(found.cells, 9);
  EXPECT_FALSE(found.supposes);
  EXPECT_EQ(found.cost, technique("naked-pair").cost);
}

// An XY-wing told as an argument: three cells, three lines, one supposition.
TEST(Measure, CountsTheLinesOfAnArgument) {
  Position position(standard_shape());
  Step step;
  step.technique = "example";
  step.eliminations = {{Cell(13), Digit(2)}};
  ArgumentReason reason;
  for (const int cell : {4, 10, 0}) reason.argument.lines.push_back({{{Constraint::of(Cell(cell)), -1}}});
  step.reason = reason;
  const Measure found = measure(step, position, nullptr);
  EXPECT_EQ(found.facts, 3);
  EXPECT_EQ(found.digits, 9);  // the three cells may hold anything here
  EXPECT_EQ(found.lines, 3);
  EXPECT_EQ(found.cases, 0);
  EXPECT_TRUE(found.supposes);
  EXPECT_FALSE(found.needs_unique);
  EXPECT_EQ(found.cost, 3 * 10 + 10 + 5);
}

TEST(Measure, CasesAndUniquenessCostMore) {
  Position position(standard_shape());
  Step step;
  step.eliminations = {{Cell(13), Digit(2)}};
  ArgumentReason reason;
  reason.supposes_target = false;
  reason.argument.split = Constraint::of(Cell(0));
  reason.argument.cases.resize(3);
  step.reason = reason;
  const int plain = measure(step, position, nullptr).cost;
  EXPECT_EQ(plain, 10 + 10 + 5);
  reason.patterns.push_back({{Cell(0)}, {DigitSet(3)}});
  step.reason = reason;
  EXPECT_EQ(measure(step, position, nullptr).cost, plain + 20);
}

// The catalogue's cost is the plainest instance: no step may come out cheaper.
TEST(Measure, IsNeverBelowTheCostInTheCatalogue) {
  for (const char* name : {"gecode5", "W-main", "Weber-fig3"}) {
    const auto path = find_path(support::read(support::published_puzzle(name))).value();
    for (const PathStep& step : path.steps) {
      const int least = step.step.technique == kBalanceId ? kLeastBalanceCost : technique(step.step.technique).cost;
      EXPECT_GE(step.measure.cost, least);
    }
  }
}

TEST(PathMeasure, AddsUpTheSteps) {
  const auto path = find_path(support::read(support::published_puzzle("W-main"))).value();
  const PathMeasure all = measure(path);
  int effort = 0;
  int hardest = 0;
  int open = 0;
  for (const PathStep& step : path.steps) {
    effort += step.measure.cost;
    hardest = std::max(hardest, step.measure.cost);
    EXPECT_GE(step.open, 1);
    EXPECT_LE(step.open, kMostOpen);
    open += step.open;
  }
  EXPECT_EQ(all.steps, static_cast<int>(path.steps.size()));
  EXPECT_EQ(all.effort, effort);
  EXPECT_EQ(all.hardest, hardest);
  EXPECT_NEAR(all.open_tenths, 10.0 * open / all.steps, 0.5);
  EXPECT_LE(all.narrow, all.beyond_singles);
}

}  // namespace
}  // namespace cp
