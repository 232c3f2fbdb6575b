// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <array>

#include "deduce/basics.h"
#include "deduce/technique.h"
#include "exact/random_grid.h"
#include "exact/solve.h"
#include "grid/notation.h"
#include "support/data_rows.h"

namespace cp {
namespace {

constexpr BasicsGroups kNakedSingles{false, false, false, false};
constexpr BasicsGroups kSingles{true, false, false, false};
constexpr BasicsGroups kSubsets{true, false, true, false};
constexpr BasicsGroups kLockedToo{true, true, true, false};

int left_after(const std::string& puzzle, BasicsGroups groups) {
  Position position = support::read(puzzle);
  EXPECT_TRUE(run_basics(position, groups)) << puzzle;
  EXPECT_TRUE(position.is_consistent());
  return position.candidate_count();
}

// 50 published puzzles, candidates left after four fixpoints: 200 numbers worked out by other programs, the third of each
// four by Gecode's all-different (IPL_DOM) as well. Source and meaning: puzzle_facts.tsv in tests/data/sources.md; the
// measure and the order of strength: H. Simonis, "Sudoku as a constraint problem", CP 2005 workshop.
TEST(Basics, ReachesThePublishedFixpoints) {
  constexpr std::array<BasicsGroups, 4> kGroups = {kNakedSingles, kSingles, kSubsets, kLockedToo};
  std::array<int, 4> solved{};
  int puzzles = 0;
  for (const support::Row& row : support::data_rows("puzzle_facts.tsv")) {
    if (row.at(3) == "-") continue;
    ++puzzles;
    for (std::size_t i = 0; i < kGroups.size(); ++i) {
      const int left = left_after(support::published_puzzle(row[0]), kGroups[i]);
      EXPECT_EQ(left, std::stoi(row.at(i + 3))) << row[0] << ", column " << i + 4;
      solved[i] += left == 81 ? 1 : 0;
    }
  }
  EXPECT_EQ(puzzles, 50);
  EXPECT_EQ(solved, (std::array<int, 4>{6, 17, 21, 21}));  // totals over the 50, worked out with the numbers
}

bool is_basic(const Technique& technique) {
  return technique.family == "single" || technique.family == "locked" || technique.family == "subset" || technique.family == "fish";
}

// The end that the basic families of the catalogue reach.
Position end_of_catalogue(Position position) {
  for (bool fired = true; fired;) {
    fired = false;
    for (const Technique& technique : catalogue()) {
      if (!is_basic(technique)) continue;
      StepList steps;
      technique.find(position, steps);
      for (const Step& step : steps.steps) apply(step, position);
      fired = fired || !steps.steps.empty();
    }
  }
  return position;
}

TEST(Basics, EndsWhereTheCatalogueEnds) {
  for (const support::PublishedPuzzle& row : support::published_puzzles()) {
    Position position = support::read(row.puzzle);
    ASSERT_TRUE(run_basics(position)) << row.name;
    EXPECT_TRUE(position == end_of_catalogue(support::read(row.puzzle))) << row.name;
  }
}

// A minimal puzzle from which random candidates were struck: soundly for even seeds, blindly for odd ones.
Position struck_puzzle(const Shape& shape, std::uint64_t seed) {
  Rng rng(seed);
  const FullGrid solution = random_grid(shape, rng.next());
  Position position = random_minimal_puzzle(solution, rng.next());
  const std::uint32_t chance = rng.below(40);
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) {
      if (rng.below(100) < chance && (seed % 2 == 1 || solution.at(cell) != digit)) position.eliminate({cell, digit});
    }
  }
  return position;
}

TEST(Basics, RunningTwiceChangesNothing) {
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    Position position = struck_puzzle(standard_shape(), seed);
    if (!run_basics(position)) continue;
    Position again = position;
    EXPECT_TRUE(run_basics(again));
    EXPECT_TRUE(again == position) << seed;
  }
}

TEST(Basics, GivesUpOnlyOnImpossiblePositions) {
  int impossible = 0;
  for (std::uint64_t seed = 0; seed < 100; ++seed) {
    for (const Shape* shape : {find_shape("4x4"), find_shape("6x6"), find_shape("9x9")}) {
      const Position start = struck_puzzle(*shape, seed);
      Position position = start;
      if (run_basics(position)) continue;
      ++impossible;
      EXPECT_EQ(how_many(start), HowMany::kNone) << to_candidate_text(start);
      EXPECT_TRUE(position == start) << "it must be left as it was";
    }
  }
  EXPECT_GT(impossible, 20);
}

TEST(Basics, SeesClashesInThePlacedDigits) {
  for (const char* puzzle : {"11..............", "1...1...........", "1....1.........."}) {
    Position position = support::read(puzzle);
    EXPECT_FALSE(run_basics(position)) << puzzle;
  }
  Position no_digit = support::read("123.....4.......");  // r1c4 can hold nothing but 4
  EXPECT_TRUE(run_basics(no_digit));
  Position no_place = support::read("12.....3...4....");  // neither 3 nor 4 is left for r1c4
  EXPECT_FALSE(run_basics(no_place)) << to_candidate_text(no_place);
}

// Hidden singles off: naked singles alone, whatever else is asked for.
TEST(Basics, NakedSinglesAloneWhenHiddenOnesAreOff) {
  const std::string puzzle = support::published_puzzle("gecode0");
  EXPECT_EQ(left_after(puzzle, BasicsGroups{false, true, true, true}), left_after(puzzle, kNakedSingles));
}

}  // namespace
}  // namespace cp
