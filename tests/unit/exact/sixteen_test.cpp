// SPDX-License-Identifier: Apache-2.0
// 16x16: the 55 instances of Gecode 6.2.0 (tests/data/sources.md), and random ones.
#include <gtest/gtest.h>

#include "exact/minimal.h"
#include "exact/random_grid.h"
#include "oracle/cadical_oracle.h"
#include "support/data_rows.h"

namespace cp {
namespace {

using support::data_rows;
using support::read;

TEST(SixteenBySixteen, PublishedInstancesAllHaveOneSolution) {
  const auto rows = data_rows("sixteen_instances.tsv");
  ASSERT_EQ(rows.size(), 55U);
  for (const support::Row& row : rows) {
    const Position puzzle = read(row.at(1));
    const SolutionList found = solutions(puzzle, 2);
    ASSERT_EQ(found.grids.size(), 1U) << row.at(0);
    EXPECT_EQ(found.end, SearchEnd::kComplete) << row.at(0);
    EXPECT_TRUE(found.grids.front().is_valid() && found.grids.front().fits(puzzle)) << row.at(0);
  }
}

TEST(SixteenBySixteen, CadicalFindsTheSameSolutionAndNoOther) {
  const auto rows = data_rows("sixteen_instances.tsv");
  for (std::size_t i = 0; i < rows.size(); i += 11) {
    const Position puzzle = read(rows[i].at(1));
    oracle::CadicalOracle oracle(puzzle);
    const auto grid = oracle.find();
    ASSERT_TRUE(grid.has_value());
    const FullGrid ours = any_solution(puzzle).value();
    for (const Cell cell : puzzle.shape().all_cells()) EXPECT_EQ(ours.at(cell), (*grid)[cell.index]);
    oracle.block(*grid);
    EXPECT_FALSE(oracle.find().has_value()) << rows[i].at(0);
  }
}

TEST(SixteenBySixteen, RandomMinimalPuzzleIsProperAndNoGivenCanGo) {
  const Position puzzle = random_minimal_puzzle(*find_shape("16x16"), 7);
  EXPECT_TRUE(is_minimal(puzzle));
  EXPECT_LT(puzzle.givens().size(), 120);
  EXPECT_EQ(oracle::CadicalOracle(puzzle).count(2), 1U);
}

}  // namespace
}  // namespace cp
