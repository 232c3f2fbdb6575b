// SPDX-License-Identifier: Apache-2.0
#include "exact/grid_count.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "exact/solve.h"

namespace cp {
namespace {

TEST(GridCount, Finds288GridsOfFourByFour) {
  // OEIS A107739: 1, 1, 288, 6670903752021072936960.
  EXPECT_EQ(count_grids(*find_shape("4x4")).value(), 288U);
}

TEST(GridCount, Finds28200960GridsOfSixBySix) {
  // F. Jarvis' enumeration notes; OEIS A291187 (number from memory, and counted again apart from this program).
  EXPECT_EQ(count_grids(*find_shape("6x6")).value(), 28'200'960U);
}

TEST(GridCount, RefusesNineByNineAndSixteenBySixteen) {
  for (const char* name : {"9x9", "16x16"}) {
    const auto count = count_grids(*find_shape(name));
    ASSERT_FALSE(count.is_ok()) << name;
    EXPECT_EQ(count.error().code, ErrorCode::kLimit);
    EXPECT_EQ(count.error().message, "there are too many " + std::string(name) + " grids to count one by one");
    EXPECT_FALSE(count.error().hint.empty());
  }
}

TEST(GridCount, AgreesWithAllFourByFourGridsListedOneByOne) {
  const SolutionList all = solutions(Position(*find_shape("4x4")), 1000);
  EXPECT_EQ(all.end, SearchEnd::kComplete);
  EXPECT_EQ(all.grids.size(), 288U);
  EXPECT_TRUE(std::is_sorted(all.grids.begin(), all.grids.end()));
  std::set<std::string> lines;
  for (const FullGrid& grid : all.grids) {
    EXPECT_TRUE(grid.is_valid());
    lines.insert(grid.to_line());
  }
  EXPECT_EQ(lines.size(), 288U);
}

TEST(GridCount, ListsTheSixGridsPrintedInA107739) {
  // First row 1234; of the two digits left for r2c1 the lower one. The comment there prints these six.
  const std::set<std::string> printed = {"1234341221434321", "1234341223414123", "1234342121434312",
                                         "1234431221433421", "1234432121433412", "1234432124133142"};
  Position start(*find_shape("4x4"));
  for (int column = 0; column < 4; ++column) start.place_given(Cell(column), Digit(column));
  std::set<std::string> found;
  for (const FullGrid& grid : solutions(start, 100).grids) found.insert(grid.to_line());
  EXPECT_EQ(found.size(), 12U);
  for (const std::string& line : printed) EXPECT_TRUE(found.count(line) == 1) << line;
}

TEST(GridCount, SortsTheLexicographicallyFirstNineByNineGridFirst) {
  // OEIS A114288. With its first five rows given, it is the smallest of all completions.
  const std::string first = "123456789456789123789123456214365897365897214897214365531642978642978531978531642";
  Position start(standard_shape());
  for (int i = 0; i < 45; ++i) start.place_given(Cell(i), Digit(first[static_cast<std::size_t>(i)] - '1'));
  const SolutionList rest = solutions(start, 1'000'000);
  ASSERT_EQ(rest.end, SearchEnd::kComplete);
  EXPECT_GT(rest.grids.size(), 1U);
  EXPECT_EQ(rest.grids.front().to_line(), first);
}

}  // namespace
}  // namespace cp
