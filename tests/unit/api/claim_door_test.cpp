// SPDX-License-Identifier: Apache-2.0
// Reasons of claims as they leave through the door: short enough to be said, honest about what is long.
#include <gtest/gtest.h>

#include <algorithm>

#include "api/commands.h"
#include "support/data_rows.h"

namespace cp::api {

namespace {

const std::vector<std::string> kClaims = {
    "r1c2 != 2", "r2c1 = r3c3", "exactly one 5 in r5c5 r6c6 r7c7", "r5c5 in 1,2,4,5,9", "r1c2 r1c3 hold 5,8", "if r1c2 = 6 then r2c1 != 5",
    "{r1 r2} = {c5} + 1..9", "no 9 in b2 & r1", "r9c9 = 4 or r9c8 = 4", "not (r4c1 = 9 and r6c2 = 7)",
};

Json reason_of(const std::string& puzzle, const std::string& text) {
  const Answer answer = claim({puzzle, text});
  EXPECT_TRUE(answer.is_ok()) << text;
  return answer.json.contains("reason") ? answer.json.at("reason") : Json::object();
}

TEST(ClaimDoor, SpokenReasonsAreAtMostFourSentences) {
  int long_ones = 0;
  for (const char* name : {"Escargot", "gecode0"}) {
    for (const std::string& text : kClaims) {
      const Json reason = reason_of(support::published_puzzle(name), text);
      if (reason.empty()) continue;
      const auto spoken = reason.at("spoken").get<std::string>();
      const auto stops = std::count(spoken.begin(), spoken.end(), '.');
      EXPECT_GE(stops, 1) << spoken;
      EXPECT_LE(stops, 4) << spoken;
      if (spoken.find("too long to be said aloud") != std::string::npos) {
        ++long_ones;
        EXPECT_NE(reason.at("written").at(1).get<std::string>().find("this is what it goes through"), std::string::npos) << text;
      }
    }
  }
  EXPECT_GT(long_ones, 0);
}

TEST(ClaimDoor, WrittenReasonsGoFromWhatIsKnownToTheClaim) {
  for (const std::string& text : kClaims) {
    const Json reason = reason_of(support::published_puzzle("Escargot"), text);
    if (reason.empty()) continue;
    const Json& written = reason.at("written");
    ASSERT_GE(written.size(), 3U) << text;
    EXPECT_EQ(written.front().get<std::string>().rfind(reason.at("facts").empty() ? "Suppose" : "Known: ", 0), 0U) << text;
    EXPECT_EQ(written.back().get<std::string>().rfind("So the claim", 0), 0U) << text;
  }
}

TEST(ClaimDoor, TheSolutionIsInNoAnswer) {
  const std::string puzzle = support::published_puzzle("Escargot");
  const std::string solution = claim({puzzle, "r1c2 = 2", "rules", false, true}).json.at("solution").get<std::string>();
  for (const std::string& text : kClaims) {
    for (const char* footing : {"", "position", "r1, c1, b1"}) {
      const Answer answer = claim({puzzle, text, footing});
      ASSERT_TRUE(answer.is_ok());
      EXPECT_FALSE(answer.json.contains("solution"));
      EXPECT_EQ(to_line(answer.json).find(solution), std::string::npos) << text;
    }
  }
}

}  // namespace

}  // namespace cp::api
