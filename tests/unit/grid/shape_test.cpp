// SPDX-License-Identifier: Apache-2.0
#include "grid/shape.h"

#include <gtest/gtest.h>

namespace cp {
namespace {

// Pairs of cells that see each other.
int edge_count(const Shape& shape) {
  int ends = 0;
  for (const Cell cell : shape.all_cells()) ends += shape.peers(cell).size();
  return ends / 2;
}

TEST(Shape, OfNineByNineHas810EdgesAndTwentyPeersACell) {
  // A. Herzberg and M. R. Murty, "Sudoku squares and chromatic polynomials", Notices AMS 54 (2007) (from memory; 810 also
  // follows from 81 * 20 / 2).
  const Shape& shape = standard_shape();
  EXPECT_EQ(shape.cell_count(), 81);
  EXPECT_EQ(shape.house_count(), 27);
  EXPECT_EQ(edge_count(shape), 810);
  for (const Cell cell : shape.all_cells()) EXPECT_EQ(shape.peers(cell).size(), 20);
}

TEST(Shape, OfOtherSizesHasThePeersTheFormulaGives) {
  // side-1 in the row, side-1 in the column, (box rows - 1)(box columns - 1) more in the box.
  for (const Shape* shape : all_shapes()) {
    const int peers = 2 * (shape->side() - 1) + (shape->box_rows() - 1) * (shape->box_columns() - 1);
    for (const Cell cell : shape->all_cells()) EXPECT_EQ(shape->peers(cell).size(), peers) << shape->name();
    EXPECT_EQ(edge_count(*shape), shape->cell_count() * peers / 2);
  }
}

TEST(Shape, HousesEachHaveAsManyCellsAsDigitsAndCoverTheGridThreeTimes) {
  for (const Shape* shape : all_shapes()) {
    std::array<int, kMaxCells> covered{};
    for (int i = 0; i < shape->house_count(); ++i) {
      EXPECT_EQ(shape->cells(House(i)).size(), shape->side());
      for (const Cell cell : shape->cells(House(i))) ++covered[cell.index];
    }
    for (const Cell cell : shape->all_cells()) EXPECT_EQ(covered[cell.index], 3);
  }
}

TEST(Shape, SeesACellExactlyWhenTheyShareAHouse) {
  for (const Shape* shape : all_shapes()) {
    for (const Cell a : shape->all_cells()) {
      for (const Cell b : shape->all_cells()) {
        const bool shared = shape->row_of(a) == shape->row_of(b) || shape->column_of(a) == shape->column_of(b) || shape->box_of(a) == shape->box_of(b);
        ASSERT_EQ(shape->peers(a).has(b), shared && a != b);
        ASSERT_EQ(shape->peers(b).has(a), shape->peers(a).has(b));
      }
    }
  }
}

TEST(Shape, OfSixBySixHasBoxesTwoRowsHighAndThreeColumnsWide) {
  const Shape& shape = *find_shape("6x6");
  EXPECT_EQ(shape.band_count(), 3);
  EXPECT_EQ(shape.stack_count(), 2);
  CellSet second_box;
  for (const int row : {0, 1}) {
    for (const int column : {3, 4, 5}) second_box.add(shape.cell_at(row, column));
  }
  EXPECT_EQ(shape.cells(shape.box(1)), second_box);
}

TEST(Shape, CommonPeersOfTwoCellsAreThoseOfBoth) {
  const Shape& shape = standard_shape();
  CellSet corner_pair;
  corner_pair.add(shape.cell_at(0, 0));
  corner_pair.add(shape.cell_at(8, 8));
  EXPECT_EQ(shape.common_peers(corner_pair).size(), 2);  // r1c9 and r9c1
  EXPECT_TRUE(shape.common_peers(corner_pair).has(shape.cell_at(0, 8)));
  CellSet row_pair;
  row_pair.add(shape.cell_at(0, 0));
  row_pair.add(shape.cell_at(0, 8));
  EXPECT_EQ(shape.common_peers(row_pair).size(), 7);  // the rest of the row
}

TEST(Shape, IsFoundByNameAndByNumberOfCells) {
  for (const Shape* shape : all_shapes()) {
    EXPECT_EQ(find_shape(shape->name()), shape);
    EXPECT_EQ(find_shape_with_cells(shape->cell_count()), shape);
  }
  EXPECT_EQ(find_shape("5x5"), nullptr);
  EXPECT_EQ(find_shape_with_cells(25), nullptr);
  EXPECT_EQ(standard_shape().name(), "9x9");
}

TEST(Shape, NamesCellsHousesAndDigitsAndReadsThemBack) {
  for (const Shape* shape : all_shapes()) {
    for (const Cell cell : shape->all_cells()) EXPECT_EQ(shape->parse_cell(shape->name_of(cell)).value(), cell);
    for (int i = 0; i < shape->house_count(); ++i) EXPECT_EQ(shape->parse_house(shape->name_of(House(i))).value(), House(i));
  }
  EXPECT_EQ(standard_shape().name_of(Cell(0)), "r1c1");
  EXPECT_EQ(find_shape("16x16")->name_of(Cell(255)), "r16c16");
  EXPECT_EQ(standard_shape().name_of(House(26)), "b9");
  EXPECT_EQ(standard_shape().long_name_of(House(10)), "column 2");
  EXPECT_EQ(Shape::name_of(Digit(8)), '9');
  EXPECT_EQ(Shape::name_of(Digit(9)), 'A');
  EXPECT_EQ(Shape::name_of(Digit(15)), 'G');
}

TEST(Shape, ReadsNamesInUpperCase) {
  EXPECT_EQ(standard_shape().parse_cell("R3C7").value(), standard_shape().cell_at(2, 6));
  EXPECT_EQ(standard_shape().parse_house("B5").value(), standard_shape().box(4));
}

TEST(Shape, RefusesNamesThatDoNotExistAndSaysWhichDo) {
  for (const char* name : {"", "r", "r0c1", "r1c0", "r10c1", "r1c10", "c1r1", "r1c1x", "r1", "a1", "r1c-1", "r 1c1", "r1111c1"}) {
    const auto cell = standard_shape().parse_cell(name);
    ASSERT_FALSE(cell.is_ok()) << name;
    EXPECT_EQ(cell.error().code, ErrorCode::kBadName);
    EXPECT_EQ(cell.error().message, "'" + std::string(name) + "' is not a cell of a 9x9 grid");
    EXPECT_EQ(cell.error().hint, "cells are written r1c1 to r9c9");
  }
  for (const char* name : {"", "r", "r0", "r10", "x1", "r1c1", "1r", "b 1"}) {
    const auto house = standard_shape().parse_house(name);
    ASSERT_FALSE(house.is_ok()) << name;
    EXPECT_EQ(house.error().message, "'" + std::string(name) + "' is not a house of a 9x9 grid");
    EXPECT_EQ(house.error().hint, "rows are r1 to r9, columns c1 to c9, boxes b1 to b9");
  }
  EXPECT_TRUE(find_shape("16x16")->parse_cell("r16c10").is_ok());
  EXPECT_FALSE(find_shape("4x4")->parse_cell("r5c1").is_ok());
}

}  // namespace
}  // namespace cp
