// SPDX-License-Identifier: Apache-2.0
#include "exact/random_grid.h"

#include <gtest/gtest.h>

#include <set>

#include "exact/minimal.h"
#include "grid/notation.h"

namespace cp {
namespace {

TEST(RandomGrid, IsValidInEveryShape) {
  for (const Shape* shape : all_shapes()) {
    for (std::uint64_t seed = 0; seed < 50; ++seed) EXPECT_TRUE(random_grid(*shape, seed).is_valid()) << shape->name() << " " << seed;
  }
}

TEST(RandomGrid, IsTheSameForTheSameSeed) {
  for (const Shape* shape : all_shapes()) EXPECT_EQ(random_grid(*shape, 42), random_grid(*shape, 42)) << shape->name();
}

TEST(RandomGrid, DiffersFromSeedToSeed) {
  std::set<std::string> lines;
  for (std::uint64_t seed = 0; seed < 200; ++seed) lines.insert(random_grid(standard_shape(), seed).to_line());
  EXPECT_EQ(lines.size(), 200U);
}

TEST(RandomGrid, ReachesAll288GridsOfFourByFour) {
  std::set<std::string> lines;
  for (std::uint64_t seed = 0; seed < 10'000; ++seed) lines.insert(random_grid(*find_shape("4x4"), seed).to_line());
  EXPECT_EQ(lines.size(), 288U);
}

TEST(RandomMinimalPuzzle, IsProperAndMinimalInEverySmallShape) {
  for (const char* name : {"4x4", "6x6", "9x9"}) {
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
      const Position puzzle = random_minimal_puzzle(*find_shape(name), seed);
      EXPECT_TRUE(is_proper(puzzle)) << name << " " << seed;
      EXPECT_TRUE(is_minimal(puzzle)) << name << " " << seed;
      EXPECT_TRUE(redundant_givens(puzzle).is_empty());
    }
  }
}

TEST(RandomMinimalPuzzle, HasTheGridItWasMadeFromAsItsSolution) {
  const FullGrid grid = random_grid(standard_shape(), 5);
  EXPECT_EQ(any_solution(random_minimal_puzzle(grid, 9)), grid);
  EXPECT_EQ(any_solution(random_minimal_puzzle(standard_shape(), 5)), grid);
}

TEST(RandomMinimalPuzzle, IsTheSameForTheSameSeed) {
  EXPECT_EQ(givens_line(random_minimal_puzzle(standard_shape(), 3)), givens_line(random_minimal_puzzle(standard_shape(), 3)));
  EXPECT_NE(givens_line(random_minimal_puzzle(standard_shape(), 3)), givens_line(random_minimal_puzzle(standard_shape(), 4)));
}

TEST(RandomMinimalPuzzle, NeverHasFewerThanSeventeenGivens) {
  // G. McGuire, B. Tugemann, G. Civario, "There is no 16-clue Sudoku", 2014. For 4x4 and 6x6: 4 and 8 (OEIS A372224, A198297).
  for (std::uint64_t seed = 0; seed < 200; ++seed) {
    EXPECT_GE(random_minimal_puzzle(standard_shape(), seed).givens().size(), 17);
    EXPECT_GE(random_minimal_puzzle(*find_shape("6x6"), seed).givens().size(), 8);
    EXPECT_GE(random_minimal_puzzle(*find_shape("4x4"), seed).givens().size(), 4);
  }
}

// How often each digit stands in the cells.
std::array<int, 9> tally(const FullGrid& grid, const CellSet& cells) {
  std::array<int, 9> counts{};
  for (const Cell cell : cells) ++counts[grid.at(cell).index];
  return counts;
}

TEST(RingTheorem, HoldsOnTenThousandRandomGrids) {
  // The 16 cells of the four 2x2 corners hold the same digits as the 16 cells around box 5 ("ring theorem", a popular
  // result on set equivalence; e.g. a public lecture of 2023/24). Columns 1, 2, 8, 9 against rows 3, 7 and boxes 4, 6.
  const Shape& shape = standard_shape();
  CellSet left;
  for (const char* column : {"c1", "c2", "c8", "c9"}) left |= shape.cells(shape.parse_house(column).value());
  CellSet right;
  for (const char* house : {"r3", "r7", "b4", "b6"}) right |= shape.cells(shape.parse_house(house).value());
  const CellSet corners = left - right;
  const CellSet ring = right - left;
  ASSERT_EQ(corners.size(), 16);
  ASSERT_EQ(ring.size(), 16);
  for (std::uint64_t seed = 0; seed < 10'000; ++seed) {
    const FullGrid grid = random_grid(shape, seed);
    ASSERT_TRUE(grid.is_valid());
    ASSERT_EQ(tally(grid, corners), tally(grid, ring)) << grid.to_line();
  }
}

TEST(RingTheorem, FailsForCellsThatAreNoBalance) {
  // Sixteen cells of the same size that do not balance: the check above can fail.
  const Shape& shape = standard_shape();
  CellSet corners;
  for (const int row : {0, 1, 7, 8}) {
    for (const int column : {0, 1, 7, 8}) corners.add(shape.cell_at(row, column));
  }
  CellSet square;
  for (int row = 2; row < 6; ++row) {
    for (int column = 2; column < 6; ++column) square.add(shape.cell_at(row, column));
  }
  int different = 0;
  for (std::uint64_t seed = 0; seed < 100; ++seed) {
    const FullGrid grid = random_grid(shape, seed);
    different += tally(grid, corners) != tally(grid, square) ? 1 : 0;
  }
  EXPECT_GT(different, 90);
}

}  // namespace
}  // namespace cp
