// SPDX-License-Identifier: Apache-2.0
#include "base/text.h"

#include <gtest/gtest.h>

#include <limits>

namespace cp {
namespace {

TEST(Text, WritesNumbersInDecimal) {
  EXPECT_EQ(to_text(0), "0");
  EXPECT_EQ(to_text(-17), "-17");
  EXPECT_EQ(to_text(std::numeric_limits<long long>::min()), "-9223372036854775808");
}

TEST(Text, SpeaksSmallNumbersAndWritesLargeOnes) {
  EXPECT_EQ(spoken_number(1), "one");
  EXPECT_EQ(spoken_number(12), "twelve");
  EXPECT_EQ(spoken_number(13), "13");
  EXPECT_EQ(spoken_number(-1), "-1");
}

TEST(Text, CountsWithTheRightPlural) {
  EXPECT_EQ(counted(1, "cell"), "one cell");
  EXPECT_EQ(counted(2, "cell"), "two cells");
  EXPECT_EQ(counted(0, "cell"), "no cells");
  EXPECT_EQ(counted(3, "box", "boxes"), "three boxes");
  EXPECT_EQ(counted(1, "box", "boxes"), "one box");
}

TEST(Text, ListsWithCommasAndALastWord) {
  EXPECT_EQ(listed({}), "");
  EXPECT_EQ(listed({"a"}), "a");
  EXPECT_EQ(listed({"a", "b"}), "a and b");
  EXPECT_EQ(listed({"a", "b", "c"}), "a, b and c");
  EXPECT_EQ(listed({"a", "b", "c"}, "or"), "a, b or c");
}

TEST(Text, JoinsWithASeparator) {
  EXPECT_EQ(joined({}, "-"), "");
  EXPECT_EQ(joined({"a", "b", "c"}, "--"), "a--b--c");
}

TEST(Text, MakesTheFirstLetterACapital) {
  EXPECT_EQ(capitalised("box 5"), "Box 5");
  EXPECT_EQ(capitalised(""), "");
  EXPECT_EQ(capitalised("5 cells"), "5 cells");
}

TEST(Text, TrimsBlanksAtBothEndsOnly) {
  EXPECT_EQ(trimmed("  a b \r\n"), "a b");
  EXPECT_EQ(trimmed(" \t\n"), "");
  EXPECT_EQ(trimmed(""), "");
}

TEST(Text, SplitsAtSeparatorsAndTrimsTheParts) {
  EXPECT_EQ(split("a, b ,c", ','), (std::vector<std::string>{"a", "b", "c"}));
  EXPECT_EQ(split("a,,c", ','), (std::vector<std::string>{"a", "", "c"}));
  EXPECT_EQ(split("", ','), std::vector<std::string>{});
  EXPECT_EQ(split("  ", ','), std::vector<std::string>{});
}

}  // namespace
}  // namespace cp
