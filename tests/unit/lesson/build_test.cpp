// SPDX-License-Identifier: Apache-2.0
// Building a lesson: everything is asked again, and what is false or does not follow stops it at its line.
#include "lesson/build.h"

#include <gtest/gtest.h>

#include "exact/solve.h"
#include "support/sample_lesson.h"

namespace cp {
namespace {

// A 4x4 puzzle with the solution 2 4 3 1 / 1 3 2 4 / 3 2 4... (worked out below by exact search, not written down here).
const std::string kPuzzle = "..3.1......4.1..";

std::string lesson_text(const std::string& lines) { return "counterpoise lesson 1\ntitle: Small\npuzzle: " + kPuzzle + "\n\n== First\n" + lines + "\n"; }

BuildResult built(const std::string& lines) {
  const auto lesson = parse_lesson(lesson_text(lines));
  if (!lesson) return BuildStop{BuildStop::Kind::kBug, lesson.error(), {}};
  return build_lesson(*lesson);
}

const BuildStop* stop_of(const BuildResult& result) { return std::get_if<BuildStop>(&result); }

FullGrid solution() { return judge_board(support::read(kPuzzle))->truth.value(); }

std::string digit_in(std::string_view cell) { return std::string(1, Shape::name_of(solution().at(find_shape_with_cells(16)->parse_cell(cell).value()))); }
std::string other_digit(std::string_view cell) { return digit_in(cell) == "1" ? "2" : "1"; }

TEST(Build, WordsNotesTermsAndTimes) {
  const BuildResult result = built("Some *word* here\nand there.\n\nMore words.\n| a note\n| goes on\n@time 45s");
  ASSERT_EQ(stop_of(result), nullptr) << stop_of(result)->error.message;
  const Scene& scene = std::get<Document>(result).scenes[0];
  ASSERT_EQ(scene.paragraphs.size(), 2U);
  EXPECT_EQ(scene.paragraphs[0].text, "Some word here and there.");
  EXPECT_EQ(scene.paragraphs[0].term, "word");
  EXPECT_EQ(scene.note, "a note goes on");
  EXPECT_EQ(scene.seconds, 45);
  EXPECT_TRUE(scene.is_time_given);
  EXPECT_EQ(scene.id, "first");
}

TEST(Build, TheRunningPositionGoesOn) {
  const BuildResult result = built("@singles\n\n== Second\n@board candidates all");
  ASSERT_EQ(stop_of(result), nullptr) << stop_of(result)->error.message;
  const auto& document = std::get<Document>(result);
  EXPECT_GT(document.scenes[0].steps.size(), 2U);
  EXPECT_TRUE(document.scenes[0].board->position == document.scenes[1].board->position);
  EXPECT_FALSE(document.scenes[1].board->position == support::read(kPuzzle));
}

TEST(Build, AFalseStepStopsAtItsLine) {
  const BuildResult result = built("words\n@step r1c1 = " + other_digit("r1c1"));
  ASSERT_NE(stop_of(result), nullptr);
  // A digit that is no candidate at all, or a false one.
  EXPECT_TRUE(stop_of(result)->kind == BuildStop::Kind::kRefuted || stop_of(result)->kind == BuildStop::Kind::kUnfit);
  EXPECT_EQ(stop_of(result)->error.where.line, 7);
  EXPECT_EQ(stop_of(result)->error.where.column, 7);
  EXPECT_EQ(stop_of(result)->scene, "First");
}

TEST(Build, AFalseClaimStopsWithoutTheSolution) {
  const BuildResult result = built("@claim r1c1 = " + other_digit("r1c1"));
  ASSERT_NE(stop_of(result), nullptr);
  EXPECT_EQ(stop_of(result)->kind, BuildStop::Kind::kRefuted);
  EXPECT_EQ(stop_of(result)->error.where.line, 6);
  EXPECT_EQ(stop_of(result)->error.message.find("solution"), std::string::npos);
}

TEST(Build, AClaimThatDoesNotFollowIsOpen) {
  const BuildResult open = built("@claim r1c1 = " + digit_in("r1c1") + " footing digits");
  ASSERT_NE(stop_of(open), nullptr);
  EXPECT_EQ(stop_of(open)->kind, BuildStop::Kind::kOpen);
  EXPECT_NE(stop_of(open)->error.hint.find("break it"), std::string::npos) << stop_of(open)->error.hint;
  const BuildResult proved = built("@claim r1c1 = " + digit_in("r1c1"));
  ASSERT_EQ(stop_of(proved), nullptr);
  ASSERT_EQ(std::get<Document>(proved).scenes[0].claims.size(), 1U);
  EXPECT_FALSE(std::get<Document>(proved).scenes[0].claims[0].reason.empty());
}

TEST(Build, AStepMustComeByWhatItNames) {
  const BuildResult result = built("@step r1c1 = " + digit_in("r1c1") + " by x-wing");
  ASSERT_NE(stop_of(result), nullptr);
  EXPECT_EQ(stop_of(result)->kind, BuildStop::Kind::kOpen);
  EXPECT_EQ(stop_of(built("@step r1c1 = " + digit_in("r1c1"))), nullptr);
}

TEST(Build, AStepTwiceIsUnfit) {
  const std::string step = "@step r1c1 = " + digit_in("r1c1") + "\n";
  const BuildResult result = built(step + step);
  ASSERT_NE(stop_of(result), nullptr);
  EXPECT_EQ(stop_of(result)->kind, BuildStop::Kind::kUnfit);
  EXPECT_NE(stop_of(result)->error.message.find("already"), std::string::npos);
}

TEST(Build, AGridOfTheTeacherMustKeepTheSolution) {
  std::string solved = solution().to_line();
  EXPECT_EQ(stop_of(built("@grid " + solved)), nullptr);
  const std::size_t first = kPuzzle.find('.');
  solved[first] = solved[first] == '1' ? '2' : '1';
  const BuildResult wrong = built("@grid " + solved);
  ASSERT_NE(stop_of(wrong), nullptr);
  EXPECT_EQ(stop_of(wrong)->kind, BuildStop::Kind::kRefuted);
}

TEST(Build, AnAsideLeavesTheMainGridAlone) {
  const BuildResult result = built("@singles\n\n== Aside\n@aside 1234341221434321\n? How many?\n! Four.\n\n== Back\n@solution");
  ASSERT_EQ(stop_of(result), nullptr) << stop_of(result)->error.message;
  const auto& document = std::get<Document>(result);
  EXPECT_TRUE(document.scenes[2].board->position == document.scenes[0].board->position);
  EXPECT_TRUE(document.scenes[1].board->position.is_complete());
  ASSERT_EQ(document.scenes[1].exercises.size(), 1U);
  EXPECT_EQ(document.scenes[1].exercises[0].answer, "Four.");
  EXPECT_TRUE(document.scenes[2].answer.has_value());
}

TEST(Build, OnlyProperPuzzles) {
  const auto lesson = parse_lesson("counterpoise lesson 1\ntitle: x\npuzzle: ................\n== A\nwords\n");
  ASSERT_TRUE(lesson.is_ok());
  const BuildResult result = build_lesson(*lesson);
  ASSERT_NE(stop_of(result), nullptr);
  EXPECT_EQ(stop_of(result)->kind, BuildStop::Kind::kUnfit);
}

TEST(Build, BalancesAreShownInTheirViews) {
  const Document document = support::sample_lesson();
  ASSERT_GT(document.scenes.size(), 8U) << document.title;
  EXPECT_FALSE(document.scenes[2].board->left.is_empty());
  EXPECT_FALSE(document.scenes[2].pans.has_value());
  EXPECT_FALSE(document.scenes[3].board->cancelled.is_empty());
  EXPECT_TRUE(document.scenes[4].pans.has_value());
  EXPECT_TRUE(document.scenes[5].table.has_value());
  EXPECT_TRUE(document.scenes[6].pans->is_tallied);
  EXPECT_EQ(document.scenes[7].board->struck.size(), 2U);
  EXPECT_TRUE(document.scenes[7].table.has_value());
  EXPECT_EQ(document.uses.back(), "balance");
  EXPECT_FALSE(document.scenes[3].claims.empty());
  EXPECT_FALSE(document.scenes[6].claims.empty());
}

// About 140 words a minute, never below five seconds.
TEST(Build, SpeakingTimeFollowsTheWords) {
  EXPECT_EQ(speaking_seconds(140), 60);
  EXPECT_EQ(speaking_seconds(1), 5);
  EXPECT_EQ(word_count("  two words\n"), 2);
  const Document document = support::sample_lesson();
  int sum = 0;
  for (const Scene& scene : document.scenes) {
    EXPECT_GE(scene.seconds, 5);
    sum += scene.seconds;
  }
  EXPECT_EQ(total_seconds(document), sum);
}

LessonReview reviewed(const std::string& lines, std::optional<int> only = std::nullopt) { return review_lesson(parse_lesson(lesson_text(lines)).value(), only); }

// Of its first scene.
const std::vector<AskedClaim>& claims_of(const LessonReview& review) { return review.document.scenes[0].claims; }

TEST(Review, GoesOnPastClaimsThatDoNotHold) {
  const LessonReview review = reviewed("@claim r1c1 = " + other_digit("r1c1") + "\n@claim r1c1 = " + digit_in("r1c1") + " footing r1\n@claim r1c1 in 1..4\n\n== Second\nMore words.");
  ASSERT_FALSE(review.stop.has_value());
  ASSERT_EQ(review.document.scenes.size(), 2U);
  const auto& claims = review.document.scenes[0].claims;
  ASSERT_EQ(claims.size(), 3U);
  EXPECT_EQ(claims[0].verdict, Verdict::kRefuted);
  EXPECT_EQ(claims[1].verdict, Verdict::kOpen);
  EXPECT_EQ(claims[2].verdict, Verdict::kProved);
  EXPECT_EQ(claims[0].line, 6);
  EXPECT_EQ(claims[2].line, 8);
  EXPECT_EQ(review.document.scenes[1].line, 10);
  EXPECT_EQ(claims[2].number, 3);
}

TEST(Review, ShowsTheSceneThatStopsItAsFarAsItGoes) {
  const LessonReview review = reviewed("Good words.\n@claim r1c1 in 1..4\n@step r1c1 = " + other_digit("r1c1") + "\n\n== Second\nMore words.");
  ASSERT_TRUE(review.stop.has_value());
  EXPECT_EQ(review.stop->error.where.line, 8);
  ASSERT_EQ(review.document.scenes.size(), 1U);
  EXPECT_EQ(review.document.scenes[0].paragraphs[0].text, "Good words.");
  EXPECT_EQ(review.document.scenes[0].claims.size(), 1U);
}

TEST(Review, AClaimThatRestsOnAFalseOneIsOpen) {
  const LessonReview review = reviewed("@claim r1c1 = " + other_digit("r1c1") + "\n@claim r1c1 != " + digit_in("r1c1") + " footing #1");
  ASSERT_EQ(review.document.scenes[0].claims.size(), 2U);
  EXPECT_EQ(review.document.scenes[0].claims[1].verdict, Verdict::kOpen);
}

TEST(Review, AsksOnlyWhatIsWantedAndKeysTellWhatIsTheSame) {
  const std::string claims = "@claim r1c1 = " + digit_in("r1c1") + "\n@claim r1c2 = " + digit_in("r1c2");
  const LessonReview none = reviewed(claims, 0);
  const LessonReview second = reviewed(claims, 2);
  ASSERT_EQ(claims_of(second).size(), 2U);
  EXPECT_FALSE(claims_of(none)[1].is_asked);
  EXPECT_FALSE(claims_of(second)[0].is_asked);
  EXPECT_TRUE(claims_of(second)[1].is_asked);
  EXPECT_EQ(second.document.scenes[0].claims[1].verdict, Verdict::kProved);
  // The words around a claim and the claims before it do not matter; the position does.
  EXPECT_EQ(claims_of(reviewed("Other words.\n\n@claim r1c2 = " + digit_in("r1c2")))[0].key, claims_of(second)[1].key);
  EXPECT_NE(claims_of(none)[0].key, claims_of(none)[1].key);
  EXPECT_NE(claims_of(reviewed("@singles\n@claim r1c2 = " + digit_in("r1c2")))[0].key, claims_of(second)[1].key);
  EXPECT_NE(claims_of(reviewed("@claim r1c2 = " + digit_in("r1c2") + " footing r1"))[0].key, claims_of(second)[1].key);
  // A candidate that fell before belongs to the position, although no digit changed.
  EXPECT_NE(claims_of(reviewed("@apply locked\n@claim r1c2 = " + digit_in("r1c2")))[0].key, claims_of(second)[1].key);
}

TEST(Review, OfAGoodLessonIsItsBuild) {
  const Lesson lesson = support::sample_written();
  const LessonReview review = review_lesson(lesson, 0);  // claims take seconds; they are asked in the build below
  ASSERT_FALSE(review.stop.has_value());
  const Document built = support::sample_lesson();
  ASSERT_EQ(review.document.scenes.size(), built.scenes.size());
  for (std::size_t i = 0; i < built.scenes.size(); ++i) {
    EXPECT_EQ(review.document.scenes[i].heading, built.scenes[i].heading);
    EXPECT_EQ(review.document.scenes[i].seconds, built.scenes[i].seconds);
    EXPECT_EQ(review.document.scenes[i].board.has_value(), built.scenes[i].board.has_value());
  }
}

}  // namespace
}  // namespace cp
