// SPDX-License-Identifier: Apache-2.0
// Puzzles composed to the bundled plans, looked at by others: CaDiCaL counts their solutions, the path walks them step by
// step, the checker of src/verify replays the way in.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

#include "compose/cleanness.h"
#include "compose/crew.h"
#include "exact/minimal.h"
#include "exact/random_grid.h"
#include "grid/canonical_form.h"
#include "grid/notation.h"
#include "oracle/cadical_oracle.h"
#include "path/path.h"
#include "verify/step_check.h"

namespace cp {
namespace {

const std::vector<std::string> kBasics = {"single", "locked", "subset", "fish"};

std::string bundled(const std::string& name) {
  std::ifstream file(std::string(CP_SOURCE_DIR) + "/data/plans/" + name + ".plan");
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

Plan read(const std::string& lines) {
  const auto plan = parse_plan("counterpoise plan 1\n" + lines);
  EXPECT_TRUE(plan) << (plan ? "" : plan.error().message);
  return plan ? *plan : Plan{};
}

class Patient final : public ComposeWatch {
 public:
  bool goes_on(const ComposeState&) override { return true; }
};

ComposeState composed(const Plan& plan, std::uint64_t seed, std::size_t wanted, int threads = 1, std::uint64_t most_blocks = 400) {
  const auto ground = ground_of(plan);
  EXPECT_TRUE(ground) << (ground ? "" : ground.error().message);
  const Workshop workshop(plan, *ground);
  ComposeState state;
  state.seed = seed;
  Patient watch;
  compose(workshop, state, wanted, most_blocks, threads, watch);
  return state;
}

std::vector<std::string> lines_of(const ComposeState& state) {
  std::vector<std::string> lines;
  for (const Composed& each : state.found) lines.push_back(givens_line(each.puzzle));
  return lines;
}

// The path with the basics alone, from a position to its end.
Position by_basics(const Position& start) {
  PathOptions options;
  options.only = kBasics;
  const auto path = find_path(start, options);
  EXPECT_TRUE(path);
  return path->end_position;
}

class BundledPlan : public testing::TestWithParam<const char*> {};

TEST_P(BundledPlan, GivesPuzzlesThatOthersConfirm) {
  const auto plan = parse_plan(bundled(GetParam()));
  ASSERT_TRUE(plan) << plan.error().message;
  const ComposeState state = composed(*plan, 7, 2);
  ASSERT_GE(state.found.size(), 2U);
  std::set<std::string> forms;
  for (const Composed& each : state.found) {
    const std::string line = givens_line(each.puzzle);
    EXPECT_EQ(oracle::CadicalOracle(each.puzzle).count(2), 1U) << line;
    forms.insert(each.form);
    // Stuck for the basics, by the catalogue itself, where the way in says so.
    const Position stuck = by_basics(each.puzzle);
    EXPECT_FALSE(stuck.is_complete()) << line;
    EXPECT_EQ(stuck, each.way.stuck) << line;
    // The planned balance moves it, by a step that the checker replays.
    const CheckResult check = check_step(stuck, each.way.step);
    EXPECT_TRUE(check.holds) << line << ": " << check.why;
    ASSERT_FALSE(each.way.step.eliminations.empty()) << line;
    // The rest falls to the basics.
    Position moved = stuck;
    apply(each.way.step, moved);
    EXPECT_TRUE(by_basics(moved).is_complete()) << line;
    for (const GivenBounds& bounds : bounds_of(*plan, each.way.weights)) EXPECT_TRUE(bounds.is_met(each.puzzle.givens())) << line;
    EXPECT_LE(each.puzzle.givens().size(), plan->most_givens);
  }
  EXPECT_EQ(forms.size(), state.found.size());
}

INSTANTIATE_TEST_SUITE_P(Compose, BundledPlan, testing::Values("three_against_four", "four_against_four", "ring"));

TEST(Compose, ThreadsAndStopsChangeNothing) {
  const Plan plan = *parse_plan(bundled("four_against_four"));
  const ComposeState alone = composed(plan, 3, 2);
  const ComposeState crew = composed(plan, 3, 2, 3);
  EXPECT_EQ(lines_of(alone), lines_of(crew));
  EXPECT_EQ(alone.reached, crew.reached);
  EXPECT_EQ(alone.next_block, crew.next_block);
  EXPECT_NE(lines_of(alone), lines_of(composed(plan, 4, 2)));
  // In two halves.
  const Workshop workshop(plan, *ground_of(plan));
  ComposeState halves;
  halves.seed = 3;
  Patient watch;
  compose(workshop, halves, 2, alone.next_block / 2, 1, watch);
  compose(workshop, halves, 2, 400, 2, watch);
  EXPECT_EQ(lines_of(alone), lines_of(halves));
  EXPECT_EQ(alone.reached, halves.reached);
}

TEST(Compose, AWatchEndsIt) {
  class Impatient final : public ComposeWatch {
   public:
    bool goes_on(const ComposeState& state) override { return state.next_block < 2; }
  } watch;
  const Plan plan = read("idea: technique xy-wing\ngivens: 17\n");
  const Workshop workshop(plan, *ground_of(plan));
  for (const int threads : {1, 2}) {
    ComposeState state;
    compose(workshop, state, 1, 1'000'000, threads, watch);
    EXPECT_GE(state.next_block, 2U);
    EXPECT_LT(state.next_block, 100U);
    EXPECT_EQ(state.reached[0], state.next_block * kTriesInBlock);
  }
}

TEST(Compose, KeepsToPatternSymmetryAndFixedDigits) {
  const Plan plan = read(
      "idea: technique x-wing\nbefore: single, locked\ngivens: 22-34\nsymmetry: half-turn\n"
      "pattern:\n5 ? ? ? ? ? ? . .\n? ? ? ? ? ? ? ? .\n? ? ? ? ? ? ? ? ?\n? ? ? ? ? ? ? ? ?\n? ? ? ? . ? ? ? ?\n? ? ? ? ? ? ? ? ?\n? ? ? ? ? ? ? ? ?\n. ? ? ? ? ? ? ? ?\n. . ? ? ? ? ? ? x\n");
  const ComposeState state = composed(plan, 1, 2);
  ASSERT_GE(state.found.size(), 2U);
  for (const Composed& each : state.found) {
    EXPECT_TRUE(has_symmetry(each.puzzle.givens(), plan.symmetries));
    EXPECT_EQ(givens_line(each.puzzle)[0], '5');
    for (const Cell cell : plan_shape().all_cells()) {
      EXPECT_FALSE(plan.pattern[cell.index] == kStaysEmpty && each.puzzle.givens().has(cell));
    }
    EXPECT_EQ(oracle::CadicalOracle(each.puzzle).count(2), 1U);
  }
}

TEST(Compose, MinimalMeansMinimalAndExcludedTechniquesAreSilent) {
  const Plan plan = read("idea: technique xy-wing\nwithout: xyz-wing, w-wing, one-digit\nminimal: yes\n");
  const ComposeState state = composed(plan, 1, 2);
  ASSERT_GE(state.found.size(), 2U);
  const TechniqueSet excluded(plan.without);
  for (const Composed& each : state.found) {
    EXPECT_TRUE(is_minimal(each.puzzle));
    EXPECT_EQ(excluded.first_that_speaks(each.way.stuck), nullptr);
    EXPECT_TRUE(check_step(each.way.stuck, each.way.step).holds);
    EXPECT_EQ(each.way.step.technique, "xy-wing");
  }
}

// Symmetry, looks and a least number of givens can keep a superfluous given from being taken away: then the plan is not met.
TEST(Compose, MinimalMeansMinimalUnderSymmetryLooksAndLeastGivens) {
  for (const char* bound : {"symmetry: half-turn\n", "look: r1,r2 at least 9\n", "givens: 27-30\n"}) {
    const Plan plan = read("idea: technique naked-pair\nbefore: single\nminimal: yes\n" + std::string(bound));
    const ComposeState state = composed(plan, 1, 1);
    ASSERT_FALSE(state.found.empty()) << bound;
    for (const Composed& each : state.found) EXPECT_TRUE(is_minimal(each.puzzle)) << bound << givens_line(each.puzzle);
    EXPECT_EQ(state.reached[static_cast<std::size_t>(Stage::kMet)], state.found.size() + state.repeated) << bound;
  }
}

// A puzzle set to a named balance meets the same plan with any balance, and with any of that kind.
TEST(Compose, AnyBalanceWillDo) {
  const Plan named = *parse_plan(bundled("four_against_four"));
  const ComposeState state = composed(named, 7, 1);
  ASSERT_FALSE(state.found.empty());
  for (const char* idea : {"idea: any balance\n", "idea: 4 rows against 4 columns\n"}) {
    const Plan plan = read(idea);
    const WayIn way = Examiner(plan).follow(state.found.front().puzzle, {});
    EXPECT_GE(way.stage, Stage::kMoved) << idea;
    EXPECT_TRUE(check_step(way.stuck, way.step).holds) << idea;
  }
}

TEST(Cleanness, CountsWhatIsThere) {
  const Plan plan = *parse_plan(bundled("four_against_four"));
  const ComposeState state = composed(plan, 7, 1);
  ASSERT_FALSE(state.found.empty());
  const Composed& first = state.found.front();
  const Cleanness clean = cleanness_of(plan, first.puzzle, first.way);
  EXPECT_GT(clean.load, 8);
  EXPECT_EQ(clean.superfluous, redundant_givens(first.puzzle).size());
  EXPECT_GE(clean.key(), clean.load - 18);
  EXPECT_FALSE(falls_apart(first.way.stuck, weigh(first.way.stuck, {{House(0), 1}, {House(9), -1}})));
}

// Rows 1 and 9 against columns 1 and 9. While the four corners are known, row 1 and column 1 are a balance, and so are row 9
// and column 9. With the corners open they cancel, and each row needs both columns for that.
TEST(Cleanness, SeesWhatFallsApart) {
  const std::vector<Weight> rows_left = {{House(0), 1}, {House(8), 1}, {House(9), -1}, {House(17), -1}};
  const std::vector<Weight> columns_left = {{House(9), 1}, {House(17), 1}, {House(0), -1}, {House(8), -1}};
  const Shape& shape = standard_shape();
  const FullGrid grid = random_grid(shape, 5);
  CellSet open;
  const auto empty = [&](std::initializer_list<std::pair<int, int>> places) {
    for (const auto& [row, column] : places) open.add(shape.cell_at(row, column));
  };
  empty({{0, 1}, {0, 2}, {3, 0}, {4, 0}, {8, 3}, {8, 4}, {1, 8}, {2, 8}});
  const Position apart = grid.with_givens(shape.all_cells() - open);
  EXPECT_TRUE(falls_apart(apart, weigh(apart, rows_left)));
  EXPECT_TRUE(falls_apart(apart, weigh(apart, columns_left)));
  empty({{0, 0}, {0, 8}, {8, 0}, {8, 8}});
  const Position together = grid.with_givens(shape.all_cells() - open);
  EXPECT_FALSE(falls_apart(together, weigh(together, rows_left)));
  EXPECT_FALSE(falls_apart(together, weigh(together, columns_left)));
}

}  // namespace
}  // namespace cp
