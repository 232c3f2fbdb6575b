// SPDX-License-Identifier: Apache-2.0
#include "speak/naming.h"

#include <gtest/gtest.h>

#include "support/sample_balances.h"

namespace cp {
namespace {

using support::candidates_from;

CellSet cells(std::string_view names) {
  CellSet set;
  for (const Candidate& named : candidates_from(names)) set.add(named.cell);
  return set;
}

std::vector<House> houses(std::initializer_list<std::string_view> names) {
  std::vector<House> list;
  for (const std::string_view name : names) list.push_back(standard_shape().parse_house(name).value());
  return list;
}

TEST(Naming, CellsAreListedAsAPersonLists) {
  EXPECT_EQ(cell_names(standard_shape(), cells("r3c7=1")), "r3c7");
  EXPECT_EQ(cell_names(standard_shape(), cells("r3c7=1 r3c9=1")), "r3c7 and r3c9");
  EXPECT_EQ(cell_names(standard_shape(), cells("r1c2=1 r1c4=1 r7c2=1"), "or"), "r1c2, r1c4 or r7c2");
}

TEST(Naming, LongListsOfCellsAreCounted) {
  const Shape& shape = standard_shape();
  const CellSet row = shape.cells(shape.row(2));
  EXPECT_EQ(cells_in_short(shape, row, shape.all_cells()), "all nine open cells of row 3");
  CellSet all_but_one = row;
  all_but_one.remove(row.first());
  EXPECT_EQ(cells_in_short(shape, all_but_one, shape.all_cells()), "eight cells of row 3");
  EXPECT_EQ(cells_in_short(shape, row | shape.cells(shape.column(0)), shape.all_cells()), "17 cells");
  EXPECT_EQ(cells_in_short(shape, cells("r1c2=1"), shape.all_cells()), "r1c2");
}

TEST(Naming, HousesGoByKind) {
  const Shape& shape = standard_shape();
  EXPECT_EQ(house_names(shape, houses({"r3"})), "row 3");
  EXPECT_EQ(house_names(shape, houses({"c2", "c1", "c9"})), "columns 1, 2 and 9");
  EXPECT_EQ(house_names(shape, houses({"b5", "r3"})), "row 3 and box 5");
  EXPECT_EQ(house_names(shape, houses({"r3", "r7", "b4", "b6"})), "rows 3 and 7 with boxes 4 and 6");
  EXPECT_EQ(house_names(shape, houses({"r3", "r7", "c1", "b6"})), "rows 3 and 7 with column 1 and with box 6");
  EXPECT_EQ(house_names(shape, houses({"r2", "r2", "r5"})), "rows 2 (counted twice) and 5");
}

TEST(Naming, DigitsTakeTheRightArticle) {
  EXPECT_EQ(a_digit(Digit(4)), "a 5");
  EXPECT_EQ(a_digit(Digit(7)), "an 8");
  EXPECT_EQ(a_digit(Digit(9)), "an A");
  EXPECT_EQ(digit_range(*find_shape("6x6")), "1 to 6");
}

TEST(Naming, CopiesAreCountedAndZeroIsNeverSaid) {
  DigitCounts counts{};
  counts[4] = 1;
  counts[7] = 2;
  EXPECT_EQ(copies_in_words(counts, standard_shape()), "one 5 and two 8s");
  EXPECT_EQ(copies_in_words(counts, standard_shape(), "more"), "one more 5 and two more 8s");
  EXPECT_EQ(digits_in_full(counts, standard_shape()), "5, 8 and 8");
  EXPECT_EQ(copies_in_words(DigitCounts{}, standard_shape()), "");
}

TEST(Naming, EliminationsAreGroupedTheShorterWay) {
  const Shape& shape = standard_shape();
  EXPECT_EQ(eliminations_in_words(shape, candidates_from("r1c2=5 r1c4=5 r7c2=5")), "5 leaves r1c2, r1c4 and r7c2");
  EXPECT_EQ(eliminations_in_words(shape, candidates_from("r3c1=2 r3c1=5 r4c1=7")), "2 and 5 leave r3c1; 7 leaves r4c1");
  EXPECT_EQ(eliminations_in_words(shape, candidates_from("r1c9=5 r1c9=7 r2c9=5 r2c9=7")), "5 and 7 leave r1c9 and r2c9");
  EXPECT_EQ(eliminations_in_words(shape, candidates_from("r4c4=3 r4c4=8 r6c4=2 r6c4=8")), "r4c4 loses 3 and 8; r6c4 loses 2 and 8");
}

}  // namespace
}  // namespace cp
