// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

#include "api/commands.h"
#include "api/storyline.h"
#include "grid/notation.h"
#include "support/data_rows.h"
#include "verify/step_check.h"

namespace cp::api {

namespace {

const std::string kStuck = "6........7.35...2.....14.........9.....9....435.1....2.6.3.1..7....9..6..452...1.";  // 9x9, seed 1600

LessonRequest about(std::string puzzle, std::string left = {}, std::string right = {}) {
  LessonRequest request;
  request.puzzle = std::move(puzzle);
  request.left = std::move(left);
  request.right = std::move(right);
  return request;
}

TEST(LessonAnswer, TheKeyIsTheFirstBalanceThatThePathNeeds) {
  const Position puzzle = support::read(kStuck);
  const auto storyline = storyline_of(puzzle, 1);
  ASSERT_TRUE(storyline.is_ok());
  EXPECT_TRUE(storyline->is_needed);
  for (std::size_t i = 0; i < storyline->key; ++i) EXPECT_NE(storyline->path.steps[i].step.technique, kBalanceId);
  EXPECT_EQ(storyline->path.steps[storyline->key].step.technique, kBalanceId);
  EXPECT_EQ(storyline->path.end, PathEnd::kSolved);
}

TEST(LessonAnswer, EveryStepOfAStorylineFollowsFromTheOneBefore) {
  for (const char* name : {"gecode4", "gecode0", "W-main"}) {
    const std::string text = support::published_puzzle(name);
    if (text.empty()) continue;
    const Position puzzle = support::read(text);
    const auto storyline = storyline_of(puzzle, 1);
    ASSERT_TRUE(storyline.is_ok()) << name;
    Position position = puzzle;
    for (const PathStep& at : storyline->path.steps) {
      ASSERT_TRUE(at.before == position) << name;
      ASSERT_TRUE(check_step(at.before, at.step).holds) << name;
      apply(at.step, position);
    }
    EXPECT_TRUE(position == storyline->path.end_position) << name;
  }
}

TEST(LessonAnswer, AChosenBalanceIsTheKey) {
  const Answer got = lesson(about(kStuck, "r1,r3", "c4,b3"));
  ASSERT_TRUE(got.is_ok()) << to_line(got.json);
  EXPECT_EQ(got.json["key"]["left"], (Json{"r1", "r3"}));
  EXPECT_EQ(got.json["key"]["right"], (Json{"c4", "b3"}));
  EXPECT_EQ(got.json["key"]["needed"], true);
}

TEST(LessonAnswer, AChosenBalanceThatSaysNothingIsOpen) {
  const Answer got = lesson(about("123434122143432.", "r1", "r2"));
  EXPECT_EQ(got.outcome, Outcome::kOpen);
  EXPECT_EQ(got.json["error"]["code"], "limit");
  EXPECT_EQ(lesson(about("123434122143432.", "r1")).json["error"]["message"], "the right pan is empty");
}

TEST(LessonAnswer, ThePageComesFirstAndFiguresHaveTheirFolder) {
  LessonRequest request = about(kStuck);
  request.title = "A title";
  const Answer got = lesson(request);
  ASSERT_TRUE(got.is_ok());
  const Json& files = got.json["files"];
  EXPECT_EQ(files[0]["name"], "index.html");
  for (std::size_t i = 1; i < files.size(); ++i) EXPECT_TRUE(files[i]["name"].get<std::string>().starts_with("figures/"));
  EXPECT_EQ(got.json["title"], "A title");
}

TEST(LessonAnswer, FactsAreTrueOfThePuzzle) {
  const Answer stuck = lesson(about(kStuck));
  ASSERT_EQ(stuck.json["facts"].size(), 2U);  // random_minimal_puzzle made it, so it is minimal
  EXPECT_NE(stuck.json["facts"][0].get<std::string>().find("minimal"), std::string::npos);
  const auto plain = path({kStuck, {}, 1, {"single", "locked", "subset", "fish"}});
  const std::string position = plain.json["stuck"]["position"];
  EXPECT_EQ(std::count(position.begin(), position.end(), '.'), 32);
  EXPECT_NE(stuck.json["facts"][1].get<std::string>().find("32 cells"), std::string::npos);
}

TEST(LessonAnswer, OnlyProperPuzzles) {
  EXPECT_EQ(lesson(about("...3..1....2....")).json["error"]["code"], "not-proper");
  EXPECT_EQ(lesson(about("11..............")).json["error"]["code"], "not-proper");
}

TEST(LessonAnswer, TheBundledPuzzleShowsTheRing) {
  std::ifstream in(std::string(CP_SOURCE_DIR) + "/data/demo.txt");
  std::string puzzle;
  for (std::string line; std::getline(in, line);) puzzle = line.starts_with('#') ? puzzle : line;
  const Answer got = lesson(about(puzzle, "c1,c2,c8,c9", "r3,r7,b4,b6"));
  ASSERT_TRUE(got.is_ok()) << to_line(got.json);
  EXPECT_EQ(got.json["key"]["needed"], true);
  EXPECT_EQ(got.json["key"]["free_slack"], 0);
  EXPECT_EQ(got.json["solved"], true);
}

}  // namespace

}  // namespace cp::api
