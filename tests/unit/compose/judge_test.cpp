// SPDX-License-Identifier: Apache-2.0
// What is said of puzzles that are there: points, shortcuts, changes, other clothes.
#include <gtest/gtest.h>

#include <algorithm>

#include "compose/improve.h"
#include "compose/vary.h"
#include "exact/solve.h"
#include "grid/notation.h"
#include "oracle/cadical_oracle.h"
#include "verify/step_check.h"

namespace cp {
namespace {

// The bundled puzzle: its corners are full, and the ring is the way in.
const std::string kDemo = "65.....4324.....86..3..........9......2.63..5...8.2........8...72.....9198..4..57";
const std::string kRing = "counterpoise plan 1\nidea: c1,c2,c8,c9 against r3,r7,b4,b6\nlook: left at least 12\n";

struct Desk {
  explicit Desk(const std::string& text) : plan(parse_plan(text).value()), ground(ground_of(plan).value()), examiner(plan) {}
  Plan plan;
  PlanGround ground;
  Examiner examiner;
  Judgement judge(const std::string& puzzle) const { return cp::judge(examiner, ground, parse_position(puzzle).value()); }
};

const JudgedPoint& point(const Judgement& judgement, const std::string& name) {
  const auto found = std::find_if(judgement.points.begin(), judgement.points.end(), [&](const JudgedPoint& each) { return each.name == name; });
  EXPECT_NE(found, judgement.points.end()) << name;
  return *found;
}

// The bundled puzzle with so many further digits of its solution that the basics are enough.
std::string easy_puzzle() {
  const Position demo = parse_position(kDemo).value();
  CellSet cells = demo.givens();
  const FullGrid grid = any_solution(demo).value();
  for (const Cell cell : demo.open()) {
    Position puzzle = grid.with_givens(cells);
    if (run_basics(puzzle) && puzzle.is_complete()) break;
    cells.add(cell);
  }
  return to_line(grid.with_givens(cells));
}

TEST(Judge, TheBundledPuzzleMeetsTheRing) {
  const Judgement judgement = Desk(kRing).judge(kDemo);
  for (const JudgedPoint& each : judgement.points) EXPECT_TRUE(each.is_met) << each.name << ": " << each.text;
  ASSERT_TRUE(judgement.clean);
  EXPECT_GT(judgement.clean->hint, 0);
}

TEST(Judge, SaysWhichPointsFail) {
  const Judgement judgement = Desk(kRing + "symmetry: half-turn\ngivens: 24-25\nlook: r5 at most 2\npattern:\nxx.....xx\nxx.....xx\n?????????\n?????????\n???x?????\n?????????\n?????????\n?????????\n?????????\n").judge(kDemo);
  EXPECT_FALSE(judgement.is_met());
  EXPECT_EQ(point(judgement, "givens").text, "It has 26 givens; the plan wants 24 to 25.");
  EXPECT_NE(point(judgement, "pattern").text.find("A given is missing in r5c4"), std::string::npos) << point(judgement, "pattern").text;
  EXPECT_FALSE(point(judgement, "symmetry").is_met);
  EXPECT_TRUE(point(judgement, "idea").is_met);
  EXPECT_FALSE(judgement.points.back().is_met) << judgement.points.back().text;  // the look at row 5
}

TEST(Judge, FindsTheShortcut) {
  const std::string easy = easy_puzzle();
  const Judgement judgement = Desk(kRing).judge(easy);
  EXPECT_FALSE(point(judgement, "before").is_met);
  EXPECT_FALSE(point(judgement, "idea").is_asked);
  ASSERT_EQ(judgement.shortcuts.size(), 1U);
  EXPECT_FALSE(judgement.shortcuts.front().text.empty());
  // It is one on the way: what is placed there is true.
  const auto grid = any_solution(parse_position(easy).value());
  for (const Cell cell : judgement.shortcuts.front().position.placed()) EXPECT_EQ(judgement.shortcuts.front().position.digit_at(cell), grid->at(cell));
}

TEST(Judge, AnImproperPuzzleIsNotFollowed) {
  const Desk desk(kRing);
  std::string open = kDemo;
  open[0] = '.';
  open[1] = '.';
  open[9] = '.';
  const Judgement judgement = desk.judge(open);
  ASSERT_NE(oracle::CadicalOracle(parse_position(open).value()).count(2), 1U);
  EXPECT_FALSE(point(judgement, "proper").is_met);
  EXPECT_FALSE(point(judgement, "idea").is_asked);
  EXPECT_FALSE(desk.judge("55" + std::string(79, '.')).is_met());
}

TEST(Improve, EveryChangeHelpsAndIsTrue) {
  const Desk desk(kRing + "givens: 25\n");
  const Position demo = parse_position(kDemo).value();
  ASSERT_FALSE(judge(desk.examiner, desk.ground, demo).is_met());
  const Improvements found = improve(desk.examiner, desk.ground, demo, {3, 1});
  EXPECT_GT(found.tried, 0);
  EXPECT_FALSE(found.best.empty());
  const int missing = static_cast<int>(found.before.points.size()) - found.before.met();
  for (const Improvement& each : found.best) {
    const Judgement again = judge(desk.examiner, desk.ground, each.puzzle);
    EXPECT_EQ(again.met(), each.met);
    EXPECT_LT(each.asked - each.met, missing);
    EXPECT_EQ(oracle::CadicalOracle(each.puzzle).count(2), 1U);
    EXPECT_EQ(each.puzzle.givens(), (demo.givens() - each.change.dropped) | each.change.added);
  }
}

// One given of the corners is lost: of all changes those are found that mend it.
TEST(Improve, MendsADamagedPuzzle) {
  const Desk desk(kRing);
  const Position demo = parse_position(kDemo).value();
  int mended = 0;
  int damaged = 0;
  for (const Cell cell : demo.givens()) {
    std::string line = kDemo;
    line[cell.index] = '.';
    const Position puzzle = parse_position(line).value();
    if (judge(desk.examiner, desk.ground, puzzle).is_met() || ++damaged > 1) continue;
    const Improvements found = improve(desk.examiner, desk.ground, puzzle, {5, 1});
    for (const Improvement& each : found.best) {
      if (each.met < each.asked) continue;
      ++mended;
      EXPECT_TRUE(judge(desk.examiner, desk.ground, each.puzzle).is_met());
      break;
    }
  }
  EXPECT_GT(damaged, 0);
  EXPECT_GT(mended, 0);
}

TEST(Vary, TheArgumentGoesAlong) {
  const Desk desk(kRing);
  const Position demo = parse_position(kDemo).value();
  const WayIn way = desk.examiner.follow(demo, desk.plan.idea.weights);
  ASSERT_EQ(way.stage, Stage::kMet);
  for (std::uint64_t seed = 0; seed < 20; ++seed) {
    const Transform clothes = Transform::random(plan_shape(), seed);
    const auto variation = vary(demo, way, clothes);
    ASSERT_TRUE(variation);
    EXPECT_TRUE(check_step(variation->way.stuck, variation->way.step).holds);
    EXPECT_EQ(variation->way.step.eliminations.size(), way.step.eliminations.size());
    // Carried back, it is the argument we started from.
    const Transform back = clothes.inverse();
    EXPECT_EQ(givens_line(back.image(variation->puzzle)), givens_line(demo));
    std::vector<Weight> houses;
    for (const Weight& each : variation->way.weights) houses.push_back({back.image(each.house), each.weight});
    std::sort(houses.begin(), houses.end());
    EXPECT_EQ(houses, way.weights);
    // And it is where the basics stop in the new clothes.
    Position stuck = variation->puzzle;
    ASSERT_TRUE(run_basics(stuck));
    EXPECT_EQ(stuck, variation->way.stuck);
  }
}

}  // namespace
}  // namespace cp
