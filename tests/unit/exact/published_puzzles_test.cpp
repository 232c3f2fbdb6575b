// SPDX-License-Identifier: Apache-2.0
// Published puzzles: their solutions, their numbers of solutions, their numbers of givens, whether they are minimal.
#include <gtest/gtest.h>

#include "exact/minimal.h"
#include "exact/solve.h"
#include "oracle/cadical_oracle.h"
#include "support/data_rows.h"

namespace cp {
namespace {

using support::data_rows;
using support::published_puzzle;
using support::published_puzzles;
using support::read;

TEST(PublishedPuzzles, HaveThePublishedSolutionAndNoOther) {
  ASSERT_EQ(published_puzzles().size(), 55U);
  for (const auto& [name, puzzle, solution] : published_puzzles()) {
    const SolutionList found = solutions(read(puzzle), 2);
    EXPECT_EQ(found.end, SearchEnd::kComplete) << name;
    ASSERT_EQ(found.grids.size(), 1U) << name;
    EXPECT_EQ(found.grids.front().to_line(), solution) << name;
    EXPECT_TRUE(is_proper(read(puzzle))) << name;
  }
}

TEST(PublishedPuzzles, AreProperForCadicalToo) {
  for (const auto& [name, puzzle, solution] : published_puzzles()) {
    oracle::CadicalOracle oracle(read(puzzle));
    const auto grid = oracle.find();
    ASSERT_TRUE(grid.has_value()) << name;
    for (std::size_t i = 0; i < 81; ++i) EXPECT_EQ(Shape::name_of((*grid)[i]), solution[i]) << name;
    oracle.block(*grid);
    EXPECT_FALSE(oracle.find().has_value()) << name;
  }
}

TEST(PublishedPuzzles, HaveTheNumberOfGivensWrittenDownForThem) {
  for (const support::Row& row : data_rows("puzzle_facts.tsv")) {
    EXPECT_EQ(to_text(read(published_puzzle(row.at(0))).givens().size()), row.at(1)) << row.at(0);
  }
}

TEST(PublishedPuzzles, AreMinimalWhereThatIsWrittenDownForThem) {
  int minimal = 0;
  for (const support::Row& row : data_rows("puzzle_facts.tsv")) {
    const Position puzzle = read(published_puzzle(row.at(0)));
    EXPECT_EQ(is_minimal(puzzle), row.at(2) == "yes") << row.at(0);
    EXPECT_EQ(redundant_givens(puzzle).is_empty(), row.at(2) == "yes") << row.at(0);
    minimal += row.at(2) == "yes" ? 1 : 0;
  }
  EXPECT_EQ(minimal, 15);
}

struct SmallPuzzle {
  const char* puzzle;
  const char* solution;
  bool is_minimal;
};

TEST(PublishedPuzzles, OfFourByFourHaveThePublishedSolutions) {
  // OEIS A198297; OEIS A109252; GTSAM testSudoku.cpp "small"; CPMpy tutorial.
  for (const auto& [puzzle, solution, minimal] : {SmallPuzzle{".12.......1....3", "3124243143121243", true},
                                                  SmallPuzzle{".4.2...1.....3..", "1432324141232314", true},
                                                  SmallPuzzle{"1..4....4.2..1..", "1234341243212143", true},
                                                  SmallPuzzle{".34.4..21..3.21.", "2341413214233214", false}}) {
    const SolutionList found = solutions(read(puzzle), 2);
    ASSERT_EQ(found.grids.size(), 1U) << puzzle;
    EXPECT_EQ(found.grids.front().to_line(), solution);
    EXPECT_EQ(is_minimal(read(puzzle)), minimal) << puzzle;
  }
}

TEST(PublishedPuzzles, WithSeveralSolutionsHaveAsManyAsCounted) {
  // PuLP examples/Sudoku2.py: W-main without r5c9, r6c9, r8c9.
  EXPECT_EQ(count_solutions(read("53..7....6..195....98....6.8...6...34..8.3...7...2.....6....28....419.......8..79"), kNoLimit).count, 6U);
  // 77 givens are not enough (encyclopaedia article "Sudoku"; the puzzle from a public question-and-answer page).
  const Position givens77 = read("..3496758587132469694875213..8763945946581327375924186761259834852347691439618572");
  EXPECT_EQ(givens77.givens().size(), 77);
  EXPECT_EQ(count_solutions(givens77, kNoLimit).count, 2U);
  EXPECT_EQ(how_many(givens77), HowMany::kMany);
}

TEST(PublishedPuzzles, WithTwoDigitsAbsentHaveAnEvenNumberOfSolutions) {
  // Herzberg and Murty 2007: the clues of a proper puzzle show at least eight digits. W-main without its 2s and 4s has 138
  // solutions (counted apart from this program); the two digits can always be exchanged.
  std::string puzzle = published_puzzle("W-main");
  for (char& character : puzzle) {
    if (character == '2' || character == '4') character = '.';
  }
  EXPECT_EQ(read(puzzle).givens().size(), 26);
  EXPECT_EQ(count_solutions(read(puzzle), kNoLimit).count, 138U);
  EXPECT_EQ(oracle::CadicalOracle(read(puzzle)).count(1000), 138U);
}

TEST(PublishedPuzzles, StopAtTheLimitAsked) {
  const Position puzzle = read("53..7....6..195....98....6.8...6...34..8.3...7...2.....6....28....419.......8..79");
  for (std::uint64_t limit = 0; limit <= 8; ++limit) {
    const SolutionCount counted = count_solutions(puzzle, limit);
    EXPECT_EQ(counted.count, std::min<std::uint64_t>(limit, 6));
    EXPECT_EQ(counted.end == SearchEnd::kComplete, limit >= 6) << limit;
    EXPECT_EQ(solutions(puzzle, limit).grids.size(), counted.count);
  }
  EXPECT_EQ(count_solutions(Position(standard_shape()), 1000).count, 1000U);
  EXPECT_EQ(count_solutions(Position(standard_shape()), 1000).end, SearchEnd::kSolutionLimit);
}

TEST(PublishedPuzzles, StopAtTheLimitOnNodes) {
  const Position puzzle = read(published_puzzle("PlatinumBlonde"));
  const SolutionCount all = count_solutions(puzzle, 2);
  ASSERT_GT(all.nodes, 10U);
  const SolutionCount some = count_solutions(puzzle, 2, 5);
  EXPECT_EQ(some.nodes, 5U);
  EXPECT_EQ(some.end, SearchEnd::kNodeLimit);
  EXPECT_EQ(count_solutions(puzzle, 2, all.nodes).end, SearchEnd::kComplete);
}

TEST(PublishedPuzzles, TakeTheSameNodesEveryTime) {
  for (const auto& [name, puzzle, solution] : published_puzzles()) {
    EXPECT_EQ(count_solutions(read(puzzle), 2).nodes, count_solutions(read(puzzle), 2).nodes) << name;
    EXPECT_EQ(count_solutions(read(puzzle), 2).nodes, solutions(read(puzzle), 2).nodes) << name;
  }
}

// Solutions left when one given is taken away.
std::uint64_t count_without(const Position& puzzle, std::string_view cell) {
  CellSet rest = puzzle.givens();
  rest.remove(puzzle.shape().parse_cell(cell).value());
  return count_solutions(from_givens(puzzle, rest), kNoLimit).count;
}

struct Deletion {
  const char* cell;
  std::uint64_t solutions;
};

TEST(DeletionCounts, OfWMainAreEightAtMostAndTwentyTwoGivensAreRedundant) {
  // Counted apart from this program by plain backtracking; every given not named leaves one solution.
  const std::vector<Deletion> counted = {{"r3c3", 8}, {"r3c8", 2}, {"r4c5", 2}, {"r5c9", 3}, {"r6c5", 4}, {"r7c7", 6}, {"r7c8", 3}, {"r9c8", 2}};
  const Position puzzle = read(published_puzzle("W-main"));
  CellSet needed;
  for (const auto& [cell, expected] : counted) {
    EXPECT_EQ(count_without(puzzle, cell), expected) << cell;
    needed.add(puzzle.shape().parse_cell(cell).value());
  }
  EXPECT_EQ(redundant_givens(puzzle), puzzle.givens() - needed);
  EXPECT_EQ(redundant_givens(puzzle).size(), 22);
  for (const Cell cell : redundant_givens(puzzle)) EXPECT_EQ(count_without(puzzle, puzzle.shape().name_of(cell)), 1U);
}

// The 17 givens of OEIS A372224 taken away one at a time: these are 16-clue puzzles with up to one and a half million solutions.
// Counted apart from this program by plain backtracking. In two tests, so that they can run side by side.
void expect_counts_of_a372224(const std::vector<Deletion>& counted) {
  const Position puzzle = read(published_puzzle("OEIS-A372224"));
  for (const auto& [cell, expected] : counted) EXPECT_EQ(count_without(puzzle, cell), expected) << cell;
}

TEST(DeletionCounts, OfA372224AreAsCountedWithoutAGivenInRowsOneToFour) {
  expect_counts_of_a372224({{"r1c4", 64643}, {"r1c6", 32680}, {"r2c8", 16416}, {"r2c9", 1528189}, {"r3c1", 9101}, {"r4c5", 71231}, {"r4c7", 712027}});
}

TEST(DeletionCounts, OfA372224AreAsCountedWithoutAGivenInRowsFiveToNine) {
  expect_counts_of_a372224({{"r5c7", 1133911}, {"r6c2", 5051}, {"r6c5", 280695}, {"r7c1", 40612}, {"r7c8", 157614}, {"r7c9", 113289},
                            {"r8c3", 619761}, {"r8c4", 236716}, {"r9c4", 303981}, {"r9c7", 574338}});
}

}  // namespace
}  // namespace cp
