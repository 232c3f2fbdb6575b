// SPDX-License-Identifier: Apache-2.0
#include "balance/weighing.h"

#include <gtest/gtest.h>

#include "exact/random_grid.h"
#include "grid/notation.h"
#include "support/random_balances.h"

namespace cp {
namespace {

Weighing on_empty_grid(std::string_view left, std::string_view right, const Shape& shape = standard_shape()) {
  return weigh(Position(shape), parse_pans(shape, left, right).value());
}

int left_units(const Weighing& weighing) { return weighing.units(weighing.left); }
int right_units(const Weighing& weighing) { return weighing.units(weighing.right); }

// The worked examples of set equivalence; the first is locked candidates, the ring theorem is told in many popular texts.
TEST(Weighing, OneRowAgainstOneBoxLeavesSixAgainstSix) {
  const Weighing w = on_empty_grid("r1", "b1");
  EXPECT_EQ(left_units(w), 6);
  EXPECT_EQ(right_units(w), 6);
  EXPECT_EQ(w.cancelled.size(), 3);
  EXPECT_EQ(w.surplus, 0);
}

TEST(Weighing, TwoRowsAgainstTwoColumnsLeaveFourteenEach) {
  const Weighing w = on_empty_grid("r1,r2", "c1,c2");
  EXPECT_EQ(left_units(w), 14);
  EXPECT_EQ(right_units(w), 14);
  EXPECT_EQ(w.cancelled.size(), 4);
}

TEST(Weighing, TwoCornerBoxesAgainstTwoRowsLeaveTwelveEach) {
  const Weighing w = on_empty_grid("b1,b9", "r1,r9");
  EXPECT_EQ(w.cancelled.size(), 6);
  EXPECT_EQ(left_units(w), 12);
  EXPECT_EQ(right_units(w), 12);
}

// The ring theorem: the 2x2 corners against the sixteen cells round box 5.
TEST(Weighing, TheRingTheoremLeavesCornersAgainstRing) {
  const Weighing w = on_empty_grid("c1,c2,c8,c9", "r3,r7,b4,b6");
  const Shape& shape = standard_shape();
  CellSet corners;
  CellSet ring;
  for (const Cell cell : shape.all_cells()) {
    const int row = shape.row_of(cell);
    const int column = shape.column_of(cell);
    if ((row < 2 || row > 6) && (column < 2 || column > 6)) corners.add(cell);
    const bool on_ring = (row == 2 || row == 6) ? column >= 2 && column <= 6 : row > 2 && row < 6 && (column == 2 || column == 6);
    if (on_ring) ring.add(cell);
  }
  EXPECT_EQ(w.left, corners);
  EXPECT_EQ(w.right, ring);
  EXPECT_EQ(w.cancelled.size(), 20);
}

TEST(Weighing, FiveBoxesAgainstTheFrameHaveASurplusOfOne) {
  const Weighing w = on_empty_grid("b1,b3,b5,b7,b9", "r1,r9,c1,c9");
  EXPECT_EQ(w.surplus, 1);
  EXPECT_EQ(left_units(w), 25);
  EXPECT_EQ(right_units(w), 16);
}

// r5c5 is covered once on the left and twice on the right, so it stays on the right once.
TEST(Weighing, FiveBoxesAgainstTheMiddleCrossHaveASurplusOfThree) {
  const Weighing w = on_empty_grid("b1,b3,b5,b7,b9", "r5,c5");
  EXPECT_EQ(w.surplus, 3);
  EXPECT_EQ(left_units(w), 40);
  EXPECT_EQ(right_units(w), 13);
  EXPECT_TRUE(w.right.has(standard_shape().parse_cell("r5c5").value()));
}

TEST(Weighing, CellsUnderTwoHousesOfAPanCountTwice) {
  const Weighing w = on_empty_grid("r2,r5,r8,c2,c5,c8", "b1,b3,b5,b7,b9");
  EXPECT_EQ(left_units(w), 29);
  EXPECT_EQ(right_units(w), 20);
  for (const char* name : {"r2c5", "r5c2", "r5c8", "r8c5"}) EXPECT_EQ(w.multiplicity(standard_shape().parse_cell(name).value()), 2) << name;
  EXPECT_EQ(w.multiplicity(standard_shape().parse_cell("r2c4").value()), 1);
}

TEST(Weighing, ABandAgainstItsBoxesLeavesNothing) {
  const Weighing w = on_empty_grid("r1,r2,r3", "b1,b2,b3");
  EXPECT_TRUE(w.left.is_empty());
  EXPECT_TRUE(w.right.is_empty());
}

// a rows against b columns leave a(9-b) and b(9-a) cells and a surplus of a-b.
TEST(Weighing, RowsAgainstColumnsLeaveWhatTheFormulaSays) {
  const Shape& shape = standard_shape();
  for (int rows = 0; rows <= 9; ++rows) {
    for (int columns = 0; columns <= 9; ++columns) {
      std::vector<Weight> weights;
      for (int i = 0; i < rows; ++i) weights.push_back({shape.row(i), 1});
      for (int i = 0; i < columns; ++i) weights.push_back({shape.column(i), -1});
      const Weighing w = weigh(Position(shape), weights);
      EXPECT_EQ(w.left.size(), rows * (9 - columns));
      EXPECT_EQ(w.right.size(), columns * (9 - rows));
      EXPECT_EQ(w.surplus, rows - columns);
    }
  }
}

// The tally is what a full grid shows, for any weights, on every shape.
TEST(Weighing, TheTallyHoldsInEverySolution) {
  for (const Shape* shape : all_shapes()) {
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
      Rng rng(seed);
      const FullGrid solution = random_grid(*shape, seed);
      Position position(*shape);
      for (const Cell cell : shape->all_cells()) {
        if (rng.below(3) == 0) position.place(cell, solution.at(cell));
      }
      const Weighing w = weigh(position, support::random_weights(*shape, rng));
      DigitCounts counted{};
      for (const Cell cell : w.open_left) counted[solution.at(cell).index] += w.multiplicity(cell);
      for (const Cell cell : w.open_right) counted[solution.at(cell).index] -= w.multiplicity(cell);
      EXPECT_EQ(counted, w.tally) << shape->name() << " seed " << seed;
      EXPECT_GE(w.slack, 0);
      int right_asked = 0;
      for (const Digit digit : shape->digits()) right_asked += w.asked_right(digit);
      EXPECT_EQ(w.units(w.open_right) - right_asked, w.slack) << "both sides have the same slack";
    }
  }
}

TEST(Pans, AreReadAsPeopleTypeThem) {
  const Shape& shape = standard_shape();
  const auto weights = parse_pans(shape, "r1, R2+2*b5", "c1 c2;c3").value();
  EXPECT_EQ(weights.size(), 6U);
  EXPECT_EQ(pan_text(shape, weights, true), "r1,r2,2*b5");
  EXPECT_EQ(pan_text(shape, weights, false), "c1,c2,c3");
}

TEST(Pans, MayBeEmpty) {
  const Shape& shape = standard_shape();
  const auto one = parse_pans(shape, "r3", " none ").value();
  ASSERT_EQ(one.size(), 1U);
  EXPECT_EQ(one[0].weight, 1);
  EXPECT_FALSE(parse_pans(shape, "none", "none"));
  EXPECT_FALSE(parse_pans(shape, "r3 none", "c1"));
  EXPECT_TRUE(parse_pan(shape, "", true).value().empty());
  EXPECT_EQ(parse_pan(shape, " , ", false).error().message, "' , ' names no house");
}

TEST(Pans, NameThePlaceOfAMistake) {
  const auto bad = parse_pans(standard_shape(), "r1,x3,r4", "c1");
  ASSERT_FALSE(bad);
  EXPECT_EQ(bad.error().message, "'x3' is not a house of a 9x9 grid");
  EXPECT_EQ(bad.error().hint, "rows are r1 to r9, columns c1 to c9, boxes b1 to b9");
  EXPECT_EQ(bad.error().where.column, 4);
  EXPECT_FALSE(parse_pans(standard_shape(), "r10", "c1"));
  EXPECT_FALSE(parse_pans(standard_shape(), "0*r1", "c1"));
  EXPECT_FALSE(parse_pans(standard_shape(), "100*r1", "c1"));
  EXPECT_FALSE(parse_pans(standard_shape(), "", " , "));
}

TEST(Pans, HoldAtMostNinetyNineHouses) {
  EXPECT_TRUE(parse_pans(standard_shape(), "99*r1", "50*c1,49*c1"));
  const auto bad = parse_pans(standard_shape(), "99*r1", "50*c1,50*c1");
  ASSERT_FALSE(bad);
  EXPECT_EQ(bad.error().message, "the pan holds more than 99 houses, counted with their factors");
  EXPECT_EQ(bad.error().where.column, 7);
}

}  // namespace
}  // namespace cp
