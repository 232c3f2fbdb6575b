// SPDX-License-Identifier: Apache-2.0
#include "lesson/draft.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "support/sample_lesson.h"

namespace cp {
namespace {

std::vector<std::string> headings(const Lesson& lesson) {
  std::vector<std::string> list;
  for (const WrittenScene& scene : lesson.scenes) list.push_back(scene.heading);
  return list;
}

TEST(Draft, ScenesGoFromThePuzzleToTheSolution) {
  EXPECT_EQ(headings(support::sample_written()),
            (std::vector<std::string>{"The puzzle", "First scan", "Weigh columns 1, 3 and 8 against row 8 and box 4", "Take off what lies in both pans",
                                      "Read the digits we know", "Settle the account, digit by digit", "The open cells fit the tally exactly", "What falls",
                                      "Here the path stops", "Summary", "Exercise 1", "Exercise 2", "The solution"}));
}

TEST(Draft, TakesItsTitleFromTheBalanceUnlessOneIsGiven) {
  EXPECT_EQ(support::sample_written().title, "Weigh columns 1, 3 and 8 against row 8 and box 4");
  EXPECT_EQ(support::sample_written("Corners").title, "Corners");
}

TEST(Draft, SaysWhereThePuzzleComesFromWhenThatIsKnown) {
  EXPECT_EQ(support::sample_written().source, "");
  EXPECT_EQ(print_lesson(support::sample_written()).find("\nsource:"), std::string::npos);
  DraftInput input = support::sample_input();
  input.source = "a friend";
  EXPECT_EQ(draft_lesson(input)->source, "a friend");
}

TEST(Draft, InACourseItNeedsWhatWasTaughtUnderItsName) {
  DraftInput input = support::sample_input();
  std::set<std::string> used;
  for (const PathStep& at : input.path) used.insert(std::string(at.step.technique));
  ASSERT_TRUE(used.count("naked-pair") == 1 || used.count("pointing") == 1);
  const std::string taught = used.count("naked-pair") == 1 ? "naked-pair" : "pointing";
  const std::string family = taught == "pointing" ? "locked" : "subset";
  const auto has = [](const std::vector<std::string>& names, const std::string& name) { return std::find(names.begin(), names.end(), name) != names.end(); };
  EXPECT_TRUE(has(draft_lesson(input)->needs, family));
  input.known = {"single", taught};
  Lesson lesson = draft_lesson(input).value();
  EXPECT_TRUE(has(lesson.needs, "single") && has(lesson.needs, taught));
  EXPECT_FALSE(has(lesson.needs, family) || has(lesson.needs, "hidden-single"));
  input.known = {"single"};
  input.teaches = {family};
  lesson = draft_lesson(input).value();
  EXPECT_EQ(lesson.teaches, (std::vector<std::string>{"balance", family}));
  EXPECT_FALSE(has(lesson.needs, taught) || has(lesson.needs, family));
}

TEST(Draft, CanBeReadAndPrintedAgain) {
  for (const char* language : {"en", "de"}) {
    DraftInput input = support::sample_input();
    input.language = language;
    const Lesson lesson = draft_lesson(input).value();
    const std::string text = print_lesson(lesson);
    const auto again = parse_lesson(text);
    ASSERT_TRUE(again.is_ok()) << again.error().message << " line " << again.error().where.line << "\n" << text;
    EXPECT_EQ(*again, lesson);
    EXPECT_EQ(print_lesson(*again), text);
  }
}

TEST(Draft, BuildsInBothLanguages) {
  for (const char* language : {"en", "de"}) {
    DraftInput input = support::sample_input();
    input.language = language;
    const BuildResult built = build_lesson(draft_lesson(input).value());
    const auto* stop = std::get_if<BuildStop>(&built);
    EXPECT_EQ(stop, nullptr) << language << ": " << (stop == nullptr ? "" : stop->error.message);
  }
}

TEST(Draft, NothingGivesTheSolutionAwayBeforeTheEnd) {
  const Document document = support::sample_lesson();
  const Position solved = support::read(support::published("gecode14").solution);
  ASSERT_FALSE(document.scenes.empty()) << document.title;
  for (std::size_t i = 0; i < document.scenes.size(); ++i) {
    const Scene& scene = document.scenes[i];
    EXPECT_EQ(scene.answer.has_value(), i + 1 == document.scenes.size());
    if (scene.board) { EXPECT_FALSE(scene.board->position.is_complete()) << scene.heading; }
  }
  const Figure& answer = *document.scenes.back().answer;
  EXPECT_TRUE(answer.position.is_complete());
  for (const Cell cell : solved.shape().all_cells()) EXPECT_EQ(answer.position.digit_at(cell), solved.digit_at(cell));
}

// The boards of questions must not show their answers.
TEST(Draft, ExercisesHideTheirAnswers) {
  const Document document = support::sample_lesson();
  int asked = 0;
  for (const Scene& scene : document.scenes) {
    if (!scene.heading.starts_with("Exercise")) continue;
    ASSERT_EQ(scene.exercises.size(), 1U);
    EXPECT_TRUE(scene.board->struck.empty());
    EXPECT_FALSE(scene.pans.has_value());
    ASSERT_TRUE(scene.exercises[0].answer_board.has_value());
    EXPECT_EQ(scene.exercises[0].answer_board->struck.size(), 2U);
    EXPECT_FALSE(scene.exercises[0].answer.empty());
    EXPECT_FALSE(scene.board->position == document.scenes[5].board->position);
    ++asked;
  }
  EXPECT_EQ(asked, 2);
}

TEST(Draft, AStuckPathIsCalledStuck) {
  const Document document = support::sample_lesson();
  const auto ending = std::find_if(document.scenes.begin(), document.scenes.end(), [](const Scene& scene) { return scene.heading == "Here the path stops"; });
  ASSERT_NE(ending, document.scenes.end());
  EXPECT_NE(ending->paragraphs[0].text.find("33 cells are still open"), std::string::npos) << ending->paragraphs[0].text;
}

TEST(Draft, ANewBalanceLaterGetsItsOwnScene) {
  DraftInput input = support::sample_input();
  input.path.push_back(input.path.back());
  const std::vector<std::string> list = headings(draft_lesson(input).value());
  EXPECT_NE(std::find(list.begin(), list.end(), "Another balance: columns 1, 3 and 8 against row 8 and box 4"), list.end());
}

TEST(Draft, RefusesAKeyBeyondThePath) {
  DraftInput input = support::sample_input();
  input.key = 700;
  const auto lesson = draft_lesson(input);
  ASSERT_FALSE(lesson.is_ok());
  EXPECT_EQ(lesson.error().code, ErrorCode::kBadArgument);
}

// A technique as the idea: its first instance, told in three scenes.
TEST(Draft, AFishIsTaughtByCounting) {
  DraftInput input(support::read(support::published("gecode14").puzzle));
  PathOptions basics;
  basics.only = {"single", "locked", "subset", "fish"};
  input.path = find_path(input.puzzle, basics)->steps;
  bool is_tried = false;
  for (std::size_t i = 0; i < input.path.size(); ++i) {
    if (input.path[i].step.technique != "x-wing" && input.path[i].step.technique != "pointing") continue;
    input.key = i;
    const BuildResult built = build_lesson(draft_lesson(input).value());
    const auto* stop = std::get_if<BuildStop>(&built);
    ASSERT_EQ(stop, nullptr) << stop->error.message << " in " << stop->scene;
    is_tried = true;
    break;
  }
  EXPECT_TRUE(is_tried);
}

}  // namespace
}  // namespace cp
