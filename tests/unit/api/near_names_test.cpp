// SPDX-License-Identifier: Apache-2.0
#include "api/near_names.h"

#include <gtest/gtest.h>

namespace cp::api {

namespace {

TEST(NearNames, LettersApart) {
  EXPECT_EQ(letters_apart("", ""), 0);
  EXPECT_EQ(letters_apart("", "abc"), 3);
  EXPECT_EQ(letters_apart("kitten", "sitting"), 3);  // the usual textbook example
  EXPECT_EQ(letters_apart("chekc", "check"), 1);     // neighbours swapped
}

TEST(NearNames, OffersNearOnesFirst) {
  const std::vector<std::string> names = {"check", "count", "path", "weigh"};
  EXPECT_EQ(name_hint("chekc", names, "the commands are"), "did you mean check?");
  EXPECT_EQ(name_hint("coun", names, "the commands are"), "did you mean count?");
  EXPECT_EQ(name_hint("zzz", names, "the commands are"), "the commands are: check, count, path and weigh");
  EXPECT_EQ(name_hint("", names, "the commands are"), "the commands are: check, count, path and weigh");
  EXPECT_EQ(name_hint(std::string(100'000, 'x'), names, "the commands are"), "the commands are: check, count, path and weigh");
}

}  // namespace

}  // namespace cp::api
