// SPDX-License-Identifier: Apache-2.0
// Courses from made-up records: what is chosen follows from the records alone.
#include "course/course.h"

#include <gtest/gtest.h>

#include "course/portrait.h"
#include "support/small_xml.h"

namespace cp {
namespace {

// A solved puzzle that asks for these techniques; its givens stand at the start of row `place`.
CourseCandidate candidate(const std::vector<std::string>& techniques, int effort, int place, const std::string& hardest = {}) {
  CourseCandidate made;
  SurveyRecord& record = made.record;
  record.depth = SurveyDepth::kFull;
  record.puzzle = std::string(81, '.');
  for (int i = 0; i < 9; ++i) record.puzzle[static_cast<std::size_t>(9 * place + i)] = static_cast<char>('1' + i);
  record.canonical = record.puzzle + std::to_string(effort) + techniques.back();
  record.givens = 9;
  record.solutions = "one";
  SurveyPath& path = record.path.emplace();
  path.end = "solved";
  path.effort = effort;
  path.steps = 50;
  path.beyond_singles = 1;
  path.hardest = 50;
  path.technique = hardest.empty() ? techniques.back() : hardest;
  for (const std::string& id : techniques) path.techniques.push_back({id, 1});
  path.tail = {"hidden-single"};
  return made;
}

std::vector<std::string> ideas_of(const Course& course) {
  std::vector<std::string> ideas;
  for (const CourseLesson& lesson : course.lessons) ideas.push_back(lesson.idea);
  return ideas;
}

TEST(Course, EachLessonHasExactlyOneNewIdea) {
  const std::vector<CourseCandidate> all{candidate({"hidden-single", "pointing", "x-wing"}, 600, 0), candidate({"hidden-single", "pointing"}, 500, 1),
                                         candidate({"hidden-single", "naked-pair", "balance"}, 900, 2), candidate({"hidden-single", "x-wing"}, 620, 3)};
  const auto course = choose_course(all, {{"pointing", "x-wing", "balance"}, {}, 12});
  ASSERT_TRUE(course);
  EXPECT_EQ(ideas_of(*course), (std::vector<std::string>{"pointing", "x-wing"}));
  ASSERT_EQ(course->gaps.size(), 1U);
  EXPECT_EQ(course->gaps[0].idea, "balance");
  EXPECT_EQ(course->gaps[0].with_others, 1);
  EXPECT_EQ(course->gaps[0].others, std::vector<std::string>{"naked-pair"});
  EXPECT_EQ(course->lessons[1].alternatives, 1);
  EXPECT_EQ(course->lessons[0].known, (std::vector<std::string>{"single"}));
  EXPECT_EQ(course->lessons[1].known, (std::vector<std::string>{"single", "pointing"}));
}

TEST(Course, TakesWhatTheCollectionOffersCheapestFirst) {
  const std::vector<CourseCandidate> all{candidate({"hidden-single", "pointing", "x-wing"}, 600, 0), candidate({"hidden-single", "pointing"}, 500, 1),
                                         candidate({"naked-single", "pointing", "x-wing", "balance"}, 900, 2)};
  const auto course = choose_course(all, {});
  EXPECT_EQ(ideas_of(*course), (std::vector<std::string>{"pointing", "x-wing", "balance"}));
  EXPECT_TRUE(course->gaps.empty());
  const auto shorter = choose_course(all, {{}, {}, 2});
  EXPECT_EQ(shorter->lessons.size(), 2U);
}

TEST(Course, EffortRisesAndBoardsDiffer) {
  // Of two puzzles for the second idea one is easier than the first lesson; of two that rise, one has the same givens.
  std::vector<CourseCandidate> all{candidate({"pointing"}, 500, 0), candidate({"pointing", "x-wing"}, 200, 1), candidate({"pointing", "x-wing"}, 560, 0),
                                   candidate({"pointing", "x-wing"}, 560, 2)};
  const auto course = choose_course(all, {{"pointing", "x-wing"}, {}, 12});
  ASSERT_EQ(course->lessons.size(), 2U);
  EXPECT_EQ(course->lessons[1].candidate, 3U);
  EXPECT_EQ(course->lessons[1].look_points, 0);
}

TEST(Course, PrefersAnIdeaThatIsTheHardestAndComesOnce) {
  std::vector<CourseCandidate> all{candidate({"hidden-single", "x-wing"}, 500, 0, "hidden-single"), candidate({"hidden-single", "x-wing"}, 500, 1),
                                   candidate({"hidden-single", "x-wing"}, 500, 2)};
  all[2].record.path->techniques[1].steps = 3;
  const auto course = choose_course(all, {{"x-wing"}, {}, 12});
  EXPECT_EQ(course->lessons.at(0).candidate, 1U);
  EXPECT_EQ(course->lessons[0].own_points, 0);
}

TEST(Course, AFamilyIsAnIdeaTooAndDuplicatesCountOnce) {
  std::vector<CourseCandidate> all{candidate({"hidden-single", "naked-pair", "hidden-pair"}, 500, 0), candidate({"hidden-single", "naked-pair"}, 500, 1)};
  all.push_back(all[1]);
  const auto course = choose_course(all, {{"subset"}, {}, 12});
  ASSERT_EQ(course->lessons.size(), 1U);
  EXPECT_EQ(course->lessons[0].candidate, 1U);
  EXPECT_EQ(course->lessons[0].alternatives, 1);
  EXPECT_FALSE(choose_course(all, {{"no-such-thing"}, {}, 12}));
}

TEST(Course, UnsolvedAndImproperPuzzlesTakeNoPart) {
  std::vector<CourseCandidate> all{candidate({"pointing"}, 500, 0), candidate({"pointing"}, 500, 1)};
  all[0].record.path->end = "stuck";
  all[1].record.solutions = "many";
  const auto course = choose_course(all, {{"pointing"}, {}, 12});
  EXPECT_EQ(course->usable, 0);
  EXPECT_TRUE(course->lessons.empty());
  EXPECT_EQ(course->gaps.size(), 1U);
}

TEST(Portrait, CountsWhatTheRecordsSay) {
  Portrait portrait;
  portrait.add(candidate({"hidden-single", "x-wing"}, 250, 0).record);
  portrait.add(candidate({"hidden-single"}, 430, 0).record);
  portrait.add_fault();
  EXPECT_EQ(portrait.words(), "2 puzzles, 2 of them proper; 1 line that is none.");
  int bars = 0;
  for (const Chart& chart : portrait.charts()) {
    int total = 0;
    for (const Bar& bar : chart.bars) total += bar.count;
    EXPECT_EQ(total, chart.title == "Techniques" ? 3 : 2) << chart.title;
    bars += static_cast<int>(chart.bars.size());
    EXPECT_LE(chart.bars.size(), 17U);
    EXPECT_EQ(support::xml_fault(chart_svg(chart, SvgUse::kFile, "chart")), "");
  }
  EXPECT_GT(bars, 5);
  EXPECT_NE(portrait_html("A <title>", portrait).find("A &lt;title&gt;"), std::string::npos);
}

TEST(Chart, GivesItsLabelsRoom) {
  const std::string label = "rows, columns and boxes against columns and boxes";
  const std::string svg = chart_svg({"t", "w", {{label, 3}, {"short", 1}}}, SvgUse::kFile, "chart");
  const std::size_t end = svg.find(">" + label + "<");
  ASSERT_NE(end, std::string::npos);
  const std::size_t at = svg.rfind(" x=\"", end) + 4;
  // At least what DejaVu Sans takes for it at 17 units (by the widths in the font)
  EXPECT_GE(std::stoi(svg.substr(at)), 454);
}

TEST(CourseMap, ShowsWhereAnIdeaIsNewAndWhereItComesAgain) {
  const std::vector<CourseCandidate> all{candidate({"pointing"}, 500, 1), candidate({"pointing", "x-wing"}, 600, 0)};
  const auto course = choose_course(all, {{"pointing", "x-wing"}, {}, 12});
  const CourseMap map = map_of(*course, all, "A course");
  ASSERT_EQ(map.rows.size(), 2U);
  using Mark = CourseMap::Mark;
  EXPECT_EQ(map.rows[0].marks, (std::vector<Mark>{Mark::kNew, Mark::kAgain}));
  EXPECT_EQ(map.rows[1].marks, (std::vector<Mark>{Mark::kNone, Mark::kNew}));
  EXPECT_EQ(map.efforts, (std::vector<int>{500, 600}));
  EXPECT_EQ(support::xml_fault(course_map_svg(map, SvgUse::kFile, "map")), "");
}

}  // namespace
}  // namespace cp
