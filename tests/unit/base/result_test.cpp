// SPDX-License-Identifier: Apache-2.0
#include "base/result.h"

#include <gtest/gtest.h>

#include <memory>

namespace cp {
namespace {

Result<int> half(int number) {
  if (number % 2 != 0) return Error{ErrorCode::kBadArgument, "not even", "try another", {3, 1, 2, 4}};
  return number / 2;
}

TEST(Result, HoldsAValue) {
  const Result<int> result = half(8);
  ASSERT_TRUE(result.is_ok());
  EXPECT_TRUE(static_cast<bool>(result));
  EXPECT_EQ(*result, 4);
}

TEST(Result, HoldsAnErrorWithItsPlaceAndHint) {
  const Result<int> result = half(7);
  ASSERT_FALSE(result);
  EXPECT_EQ(result.error().code, ErrorCode::kBadArgument);
  EXPECT_EQ(result.error().message, "not even");
  EXPECT_EQ(result.error().hint, "try another");
  EXPECT_TRUE(result.error().where.is_known());
  EXPECT_FALSE(TextSpan{}.is_known());
}

TEST(Result, GivesAwayAValueThatCannotBeCopied) {
  Result<std::unique_ptr<int>> result(std::make_unique<int>(5));
  const std::unique_ptr<int> taken = std::move(result).value();
  EXPECT_EQ(*taken, 5);
}

}  // namespace
}  // namespace cp
