// SPDX-License-Identifier: Apache-2.0
// Records of single puzzles: what they say agrees with the commands that say it one by one, and they survive JSON.
#include <gtest/gtest.h>

#include <algorithm>

#include "exact/random_grid.h"
#include "grid/canonical_form.h"
#include "grid/notation.h"
#include "path/needed.h"
#include "scan/record_json.h"
#include "scan/survey_puzzle.h"
#include "support/data_rows.h"

namespace cp {
namespace {

const std::vector<std::string> kBasicNames = {"single", "locked", "subset", "fish"};

Position puzzle_named(std::string_view name) { return support::read(support::published_puzzle(name)); }

TEST(SurveyRecord, SaysWhatThePathCommandSaysWithinItsDepth) {
  int balanced = 0;
  for (std::uint64_t seed = 0; seed < 25; ++seed) {
    const Position puzzle = random_minimal_puzzle(standard_shape(), seed);
    const SurveyRecord record = survey_puzzle(puzzle, {SurveyDepth::kBasics});
    const auto path = find_path(puzzle, {{}, kBasicNames});
    ASSERT_TRUE(record.path);
    EXPECT_EQ(record.solutions, "one");
    EXPECT_EQ(record.path->steps, static_cast<int>(path->steps.size()));
    EXPECT_EQ(record.path->end, path->end == PathEnd::kSolved ? "solved" : "stuck");
    EXPECT_EQ(record.path->effort, measure(*path).effort);
    EXPECT_EQ(record.open_after_basics, path->end_position.open().size());
    EXPECT_TRUE(record.balances.empty());
    const SurveyRecord further = survey_puzzle(puzzle, {SurveyDepth::kBalances});
    EXPECT_EQ(further.canonical, canonical_form(puzzle).text);
    if (further.needed.empty()) continue;
    ++balanced;
    EXPECT_EQ(further.needed, std::vector<std::string>{"balance"});
    EXPECT_EQ(record.path->end, "stuck");
    EXPECT_EQ(further.path->end, "solved");
    for (const BalanceNote& note : further.balances) EXPECT_EQ(note.slack, 0);
  }
  EXPECT_GT(balanced, 0);
}

TEST(SurveyRecord, TailIsWhatComesAfterTheHardestStep) {
  const SurveyRecord record = survey_puzzle(puzzle_named("gecode0"), {SurveyDepth::kFull});
  const auto path = find_path(puzzle_named("gecode0"), {});
  const PathMeasure all = measure(*path);
  const auto hardest = std::find_if(path->steps.begin(), path->steps.end(), [&](const PathStep& step) { return step.measure.cost == all.hardest; });
  ASSERT_NE(hardest, path->steps.end());
  std::vector<std::string> tail;
  for (auto step = hardest + 1; step != path->steps.end(); ++step) {
    if (std::find(tail.begin(), tail.end(), step->step.technique) == tail.end()) tail.emplace_back(step->step.technique);
  }
  EXPECT_EQ(record.path->tail, tail);
  EXPECT_EQ(record.path->narrow, all.narrow);
  EXPECT_EQ(record.path->open_tenths, all.open_tenths);
}

TEST(SurveyRecord, PuzzlesThatAreNotProperHaveNoPath) {
  EXPECT_EQ(survey_puzzle(Position(standard_shape())).solutions, "many");
  const SurveyRecord none = survey_puzzle(support::read("55" + std::string(79, '.')));
  EXPECT_EQ(none.solutions, "none");
  EXPECT_FALSE(none.path);
  EXPECT_TRUE(none.is_proper() == false && none.needed.empty());
}

TEST(SurveyRecord, IsReadBackFromItsLine) {
  for (const SurveyDepth depth : {SurveyDepth::kForm, SurveyDepth::kBasics, SurveyDepth::kBalances}) {
    for (const char* name : {"gecode0", "gecode5", "Escargot", "OEIS-A372224"}) {
      const SurveyRecord record = survey_puzzle(puzzle_named(name), {depth});
      const auto line = parse_scan_line(record_line(record, 7));
      ASSERT_TRUE(line) << line.error().message;
      EXPECT_EQ(line->line, 7U);
      EXPECT_EQ(*line->record, record);
    }
  }
  const auto fault = parse_scan_line(error_line({ErrorCode::kBadPuzzle, "a \"word\"\n", "try", {}}, 3));
  ASSERT_TRUE(fault);
  EXPECT_EQ(fault->error, "a \"word\"\n");
  EXPECT_EQ(fault->line, 3U);
  EXPECT_FALSE(parse_scan_line("{\"puzzle\":3}"));
  EXPECT_FALSE(parse_scan_line("no JSON"));
  EXPECT_FALSE(parse_scan_line("[1]"));
  const std::string whole = record_line(survey_puzzle(puzzle_named("gecode5"), {SurveyDepth::kBalances}));
  for (const char* key : {"depth", "end", "techniques", "balances", "open_after_basics", "symmetries"}) {
    std::string broken = whole;
    broken.replace(broken.find("\"" + std::string(key) + "\":") + 1, 1, "x");
    const auto line = parse_scan_line(broken);
    ASSERT_FALSE(line) << key;
    EXPECT_NE(line.error().message.find(key), std::string::npos);
  }
}

TEST(SurveyRecord, KindNamesTheHousesWhicheverPanTheyAreIn) {
  const Shape& shape = standard_shape();
  const House row = shape.row(0);
  const House column = shape.column(1);
  const House box = shape.box(4);
  EXPECT_EQ(kind_of(shape, {{row, 1}, {column, -1}}), "rows against columns");
  EXPECT_EQ(kind_of(shape, {{row, -1}, {column, 1}}), "rows against columns");
  EXPECT_EQ(kind_of(shape, {{column, 1}, {row, -1}, {box, -1}}), "rows and boxes against columns");
  EXPECT_EQ(kind_of(shape, {{box, 1}}), "boxes against nothing");
}

}  // namespace
}  // namespace cp
