// SPDX-License-Identifier: Apache-2.0
#include "base/checked_int.h"

#include <gtest/gtest.h>

#include <limits>

namespace cp {
namespace {

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t kLeast = std::numeric_limits<std::int64_t>::min();

TEST(CheckedInt, CalculatesLikeIntegersWhileItFits) {
  const CheckedInt value = CheckedInt(6) * 7 - 2 + 2;
  EXPECT_TRUE(value.is_ok());
  EXPECT_EQ(value.value(), 42);
  EXPECT_EQ((CheckedInt(-3) * 5).value(), -15);
}

TEST(CheckedInt, ReachesBothEndsWithoutOverflow) {
  EXPECT_TRUE((CheckedInt(kMost - 1) + 1).is_ok());
  EXPECT_EQ((CheckedInt(kMost - 1) + 1).value(), kMost);
  EXPECT_TRUE((CheckedInt(kLeast + 1) - 1).is_ok());
}

TEST(CheckedInt, NoticesEveryKindOfOverflow) {
  EXPECT_FALSE((CheckedInt(kMost) + 1).is_ok());
  EXPECT_FALSE((CheckedInt(kLeast) - 1).is_ok());
  EXPECT_FALSE((CheckedInt(kMost) * 2).is_ok());
  EXPECT_FALSE((CheckedInt(kLeast) * -1).is_ok());
}

TEST(CheckedInt, RemembersAnOverflowForGood) {
  CheckedInt value(kMost);
  value += 1;
  value -= 1;
  EXPECT_FALSE(value.is_ok());
  EXPECT_FALSE((CheckedInt(1) + value).is_ok());
  EXPECT_FALSE((value * 0).is_ok());
}

}  // namespace
}  // namespace cp
