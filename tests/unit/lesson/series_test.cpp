// SPDX-License-Identifier: Apache-2.0
#include "lesson/series.h"

#include <gtest/gtest.h>

namespace cp {
namespace {

SeriesMember member(std::string name, int level, std::vector<std::string> needs, std::vector<std::string> teaches, std::vector<std::string> uses = {}) {
  SeriesMember made;
  made.name = std::move(name);
  made.document.level = level;
  made.document.needs = std::move(needs);
  made.document.teaches = std::move(teaches);
  made.document.uses = std::move(uses);
  return made;
}

std::vector<std::string> names(const SeriesPlan& plan, const std::vector<SeriesMember>& members) {
  std::vector<std::string> list;
  for (const std::size_t i : plan.order) list.push_back(members[i].name);
  return list;
}

TEST(Series, WhatIsNeededIsTaughtBefore) {
  SeriesAbout about;
  about.assumes = {"single"};
  const std::vector<SeriesMember> members = {member("a", 1, {"ring"}, {"x"}), member("b", 3, {"single"}, {"balance"}), member("c", 2, {"balance"}, {"ring"})};
  const SeriesPlan plan = plan_series(about, members);
  EXPECT_EQ(names(plan, members), (std::vector<std::string>{"b", "c", "a"}));
  EXPECT_TRUE(plan.gaps.empty());
}

TEST(Series, TheGentlerComesFirst) {
  const std::vector<SeriesMember> members = {member("a", 4, {}, {}), member("c", 2, {}, {}), member("b", 2, {}, {})};
  EXPECT_EQ(names(plan_series({}, members), members), (std::vector<std::string>{"b", "c", "a"}));
}

TEST(Series, GapsAreNamed) {
  SeriesAbout about;
  about.assumes = {"subset"};
  const std::vector<SeriesMember> members = {member("one", 1, {"magic"}, {}, {"naked-pair", "x-wing"}), member("two", 2, {"swan"}, {"heron"}), member("three", 3, {"heron"}, {"swan"})};
  const SeriesPlan plan = plan_series(about, members);
  ASSERT_EQ(plan.gaps.size(), 3U);
  bool magic = false;
  bool fish = false;
  bool swan = false;
  for (const SeriesGap& gap : plan.gaps) {
    magic = magic || (gap.missing == "magic" && !gap.is_used && gap.taught_later.empty());
    fish = fish || (gap.missing == "x-wing" && gap.is_used);  // the naked pair belongs to a family that is assumed
    swan = swan || (gap.missing == "swan" && gap.taught_later == "three");
  }
  EXPECT_TRUE(magic && fish && swan);
}

TEST(Series, AGroupStandsForItsTechniques) {
  SeriesAbout about;
  about.assumes = {"uniqueness"};
  EXPECT_TRUE(plan_series(about, {member("one", 1, {"unique-rectangle-1"}, {}, {"hidden-rectangle"})}).gaps.empty());
  EXPECT_EQ(plan_series(about, {member("one", 1, {"x-wing"}, {})}).gaps.size(), 1U);
}

TEST(Series, CoverageSaysWhatOccursWhere) {
  const std::vector<SeriesMember> members = {member("a", 1, {"single"}, {"balance"}, {"hidden-single", "balance"})};
  const SeriesPlan plan = plan_series({}, members);
  ASSERT_EQ(plan.coverage.size(), 3U);
  EXPECT_EQ(plan.coverage[0].name, "balance");
  EXPECT_EQ(plan.coverage[0].marks[0], SeriesPlan::Mark::kTaught);
  EXPECT_EQ(plan.coverage[1].marks[0], SeriesPlan::Mark::kUsed);
  EXPECT_EQ(plan.coverage[2].marks[0], SeriesPlan::Mark::kNeeded);
}

TEST(Series, AboutIsRead) {
  const auto about = parse_series("counterpoise series 1\ntitle: Four\nlanguage: de\nassumes: single, locked\n\nWords here\ngo on.\n\nMore: words.\n");
  ASSERT_TRUE(about.is_ok());
  EXPECT_EQ(about->title, "Four");
  EXPECT_EQ(about->assumes, (std::vector<std::string>{"single", "locked"}));
  EXPECT_EQ(about->words, (std::vector<std::string>{"Words here go on.", "More: words."}));
  EXPECT_TRUE(parse_series("").is_ok());
  const auto wrong = parse_series("hello\n");
  ASSERT_FALSE(wrong.is_ok());
  EXPECT_EQ(wrong.error().where.line, 1);
  EXPECT_FALSE(parse_series("counterpoise series 1\ntitle:\n").is_ok());
}

TEST(Series, SlipsInAboutAreToldWithTheirPlace) {
  struct Slip {
    const char* lines;
    int line;
    int column;
    const char* says;
  };
  const std::vector<Slip> slips = {{"titel: x\nassumes: single\n\nWords.\n", 2, 1, "'titel' is not known here"},
                                   {"  title T\n", 2, 3, "a line such as title: "},
                                   {"title: T\nWords.\n", 3, 1, "a line such as title: "},
                                   {"language: xx9!\n", 2, 11, "'xx9!' is no name of a language"},
                                   {"title: \xC3\x84\nassumes: single, Locked\n", 3, 18, "'Locked' cannot be the name"},
                                   {"assumes: single,, fish\n", 2, 10, "cannot be the name"},
                                   {"title: A\ntitle: B\n", 3, 1, "was given before"}};
  for (const Slip& slip : slips) {
    const auto about = parse_series(std::string(kSeriesFirstLine) + "\n" + slip.lines);
    ASSERT_FALSE(about.is_ok()) << slip.lines;
    EXPECT_EQ(about.error().where.line, slip.line) << slip.lines;
    EXPECT_EQ(about.error().where.column, slip.column) << slip.lines;
    EXPECT_NE(about.error().message.find(slip.says), std::string::npos) << about.error().message;
    EXPECT_FALSE(about.error().hint.empty());
  }
  EXPECT_FALSE(parse_series("\n").is_ok());
  const auto words = parse_series(std::string(kSeriesFirstLine) + "\n% a comment\ntitle: T\n\nNo title here: words.\ntitel: x\n");
  ASSERT_TRUE(words.is_ok());
  EXPECT_EQ(words->words, (std::vector<std::string>{"No title here: words. titel: x"}));
}

}  // namespace
}  // namespace cp
