// SPDX-License-Identifier: Apache-2.0
#include "lesson/draft.h"

#include <gtest/gtest.h>

#include "support/sample_lesson.h"

namespace cp {
namespace {

std::vector<std::string> headings(const Document& document) {
  std::vector<std::string> list;
  for (const Scene& scene : document.scenes) list.push_back(scene.heading);
  return list;
}

TEST(Draft, ScenesGoFromThePuzzleToTheSummary) {
  EXPECT_EQ(headings(support::sample_lesson()),
            (std::vector<std::string>{"The puzzle", "First scan", "Weigh columns 1, 3 and 8 against row 8 and box 4", "Take off what lies in both pans",
                                      "Read the digits we know", "Settle the account, digit by digit", "The open cells fit the tally exactly", "What falls",
                                      "Here the path stops", "Summary"}));
}

TEST(Draft, TakesItsTitleFromTheBalanceUnlessOneIsGiven) {
  EXPECT_EQ(support::sample_lesson().title, "Weigh columns 1, 3 and 8 against row 8 and box 4");
  EXPECT_EQ(support::sample_lesson("Corners").title, "Corners");
}

TEST(Draft, NothingGivesTheSolutionAwayBeforeTheEnd) {
  const Document document = support::sample_lesson();
  const Position solved = support::read(support::published("gecode14").solution);
  for (std::size_t i = 0; i < document.scenes.size(); ++i) {
    const Scene& scene = document.scenes[i];
    EXPECT_EQ(scene.answer.has_value(), i + 1 == document.scenes.size());
    ASSERT_TRUE(scene.board.has_value());
    EXPECT_FALSE(scene.board->position.is_complete()) << scene.heading;
  }
  const Figure& answer = *document.scenes.back().answer;
  EXPECT_TRUE(answer.position.is_complete());
  EXPECT_EQ(answer.position.givens().size(), 28);
  for (const Cell cell : solved.shape().all_cells()) EXPECT_EQ(answer.position.digit_at(cell), solved.digit_at(cell));
}

TEST(Draft, SaysWhetherUniquenessWasProved) {
  DraftInput input = support::sample_input();
  EXPECT_NE(draft_lesson(input)->scenes[0].paragraphs[1].text.find("exactly one solution: a complete search has proved it"), std::string::npos);
  input.is_proved_unique = false;
  EXPECT_NE(draft_lesson(input)->scenes[0].paragraphs[1].text.find("has not been proved here"), std::string::npos);
}

TEST(Draft, AStuckPathIsCalledStuck) {
  const Document document = support::sample_lesson();
  const Scene& ending = document.scenes[document.scenes.size() - 2];
  EXPECT_EQ(ending.heading, "Here the path stops");
  EXPECT_NE(ending.paragraphs[0].text.find("33 cells are still open"), std::string::npos) << ending.paragraphs[0].text;
}

// A path that ends in singles does not spell them out.
TEST(Draft, TheLastSinglesAreLeftToTheAudience) {
  DraftInput input = support::sample_input();
  Position position = input.path.back().before;
  const Position solved = support::read(input.solution);
  for (const Candidate& gone : input.path.back().step.eliminations) position.eliminate(gone);
  for (const Cell cell : position.open()) {
    Step single{"naked-single", {{cell, *solved.digit_at(cell)}}, {}, LoneReason{Constraint::of(cell)}};
    input.path.push_back({position, single, 20, {}});
    apply(single, position);
  }
  const Document document = draft_lesson(input).value();
  const Scene& ending = document.scenes[document.scenes.size() - 2];
  EXPECT_EQ(ending.heading, "The rest is singles");
  EXPECT_TRUE(ending.steps.empty());
  EXPECT_EQ(ending.board->position, input.path[2].before);
}

TEST(Draft, ANewBalanceLaterGetsItsOwnScene) {
  DraftInput input = support::sample_input();
  input.path.push_back(input.path[1]);
  const std::vector<std::string> list = headings(draft_lesson(input).value());
  EXPECT_NE(std::find(list.begin(), list.end(), "Another balance: columns 1, 3 and 8 against row 8 and box 4"), list.end());
}

TEST(Draft, RefusesAKeyThatIsNoBalance) {
  DraftInput input = support::sample_input();
  input.key = 0;
  const auto lesson = draft_lesson(input);
  ASSERT_FALSE(lesson.is_ok());
  EXPECT_EQ(lesson.error().code, ErrorCode::kBadArgument);
  EXPECT_EQ(lesson.error().message, "the step chosen as the key of the lesson is no balance");
  input.key = 7;
  EXPECT_FALSE(draft_lesson(input).is_ok());
}

TEST(Draft, RefusesTheSolutionOfAnotherPuzzle) {
  DraftInput input = support::sample_input();
  input.solution = support::published("gecode5").solution;
  ASSERT_FALSE(draft_lesson(input).is_ok());
  EXPECT_EQ(draft_lesson(input).error().message, "the solution does not fit the puzzle");
  input.solution = "123";
  EXPECT_FALSE(draft_lesson(input).is_ok());
}

}  // namespace
}  // namespace cp
