// SPDX-License-Identifier: Apache-2.0
#include "exact/full_grid.h"

#include <gtest/gtest.h>

#include "grid/notation.h"

namespace cp {
namespace {

// OEIS A114288: the lexicographically first 9x9 grid.
constexpr const char* kFirstGrid = "123456789456789123789123456214365897365897214897214365531642978642978531978531642";

TEST(FullGrid, ReadsAndWritesTheSameLine) {
  const auto grid = FullGrid::from_line(kFirstGrid);
  ASSERT_TRUE(grid.has_value());
  EXPECT_EQ(grid->to_line(), kFirstGrid);
  EXPECT_TRUE(grid->is_valid());
}

TEST(FullGrid, RefusesALineThatIsNotFull) {
  EXPECT_FALSE(FullGrid::from_line("12341").has_value());
  EXPECT_FALSE(FullGrid::from_line("123434122143432.").has_value());
  EXPECT_FALSE(FullGrid::from_line("1234341221434325").has_value());  // no digit 5 on 4x4
}

TEST(FullGrid, SeesARepeatedDigit) {
  auto grid = FullGrid::from_line("1234341221434321").value();
  EXPECT_TRUE(grid.is_valid());
  grid.set(Cell(0), Digit(1));
  EXPECT_FALSE(grid.is_valid());
}

TEST(FullGrid, GoesToAPositionAndBack) {
  const auto grid = FullGrid::from_line(kFirstGrid).value();
  const Position position = grid.to_position();
  EXPECT_TRUE(position.is_complete());
  EXPECT_EQ(position.givens().size(), 81);
  EXPECT_EQ(FullGrid::from(position), grid);
  EXPECT_EQ(to_line(position), kFirstGrid);
}

TEST(FullGrid, ComesFromNoPositionWithAnOpenCell) {
  const auto grid = FullGrid::from_line(kFirstGrid).value();
  CellSet givens = grid.shape().all_cells();
  givens.remove(Cell(40));
  EXPECT_FALSE(FullGrid::from(grid.with_givens(givens)).has_value());
}

TEST(FullGrid, FitsOnlyPositionsThatLeaveItsDigits) {
  const auto grid = FullGrid::from_line(kFirstGrid).value();
  Position position(grid.shape());
  EXPECT_TRUE(grid.fits(position));
  position.eliminate({Cell(0), Digit(4)});
  EXPECT_TRUE(grid.fits(position));
  position.eliminate({Cell(0), Digit(0)});
  EXPECT_FALSE(grid.fits(position));
}

TEST(FullGrid, IsOrderedAsItsLineIs) {
  const auto low = FullGrid::from_line("1234341221434321").value();
  const auto high = FullGrid::from_line("1234341223414123").value();
  EXPECT_LT(low, high);
  EXPECT_NE(low, high);
}

TEST(FullGrid, UsesLettersOnSixteen) {
  const Shape& shape = *find_shape("16x16");
  FullGrid grid(shape);
  grid.set(Cell(0), Digit(15));
  EXPECT_EQ(grid.to_line().substr(0, 2), "G1");
  EXPECT_EQ(FullGrid::from_line(grid.to_line()), grid);
}

}  // namespace
}  // namespace cp
