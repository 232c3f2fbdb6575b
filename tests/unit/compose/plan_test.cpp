// SPDX-License-Identifier: Apache-2.0
// The text of plans: read, written, and refused with the place.
#include <gtest/gtest.h>

#include <algorithm>

#include "base/rng.h"
#include "compose/ground.h"

namespace cp {
namespace {

const std::string kFirst = "counterpoise plan 1\n";

struct Fault {
  const char* lines;
  int line;
  const char* message;
};

TEST(Plan, SaysWhatIsWrongAndWhere) {
  const Fault faults[] = {
      {"idea: nonsense\n", 2, "'nonsense' is no idea"},
      {"\n% a comment\nidea: any balance\nlook: left some\n", 5, "'some' says no number of givens"},
      {"idea: c1,c10 against r3\n", 2, "c10"},
      {"idea: c1 against c1\n", 2, "the two pans take each other away"},
      {"idea: 3 rows against 4 colums\n", 2, "'4 colums' is no number of houses"},
      {"idea: 3 rowzz against 4 columns\n", 2, "'3 rowzz' is no number of houses"},
      {"idea: 3 rows against 4 columns + 1 boxen\n", 2, "'1 boxen' is no number of houses"},
      {"idea: technique xy-wng\n", 2, "xy-wng"},
      {"idea: any balance\nbefore: singel\n", 3, "singel"},
      {"idea: any balance\nidea: any balance\n", 3, "'idea' stands twice"},
      {"idea: any balance\ngivens: 28-24\n", 3, "'28-24' is no number of givens"},
      {"idea: any balance\nlevel: 6\n", 3, "'6' is no level"},
      {"idea: any balance\nsymmetry: round\n", 3, "'round' is no symmetry"},
      {"idea: any balance\nminimal: perhaps\n", 3, "'perhaps' is neither yes nor no"},
      {"idea: any balance\nlook: r1,r0 5\n", 3, "'r1,r0' is no region of the board"},
      {"idea: any balance\ntitle:\n", 3, "'title' says nothing"},
      {"idea: any balance\ncolour: red\n", 3, "'colour' is no line of a plan"},
      {"idea: any balance\npattern:\n? ? ?\n", 4, "this row of the pattern has three cells"},
      {"idea: any balance\npattern:\n? ? ? | ? # ? | ? ? ?\n", 4, "'#' is no cell of a pattern"},
      {"idea: any balance\npattern:\n? ? ? | ? ? ? | ? ? ?\n", 3, "the pattern has one row"},
  };
  for (const Fault& fault : faults) {
    const auto plan = parse_plan(kFirst + fault.lines);
    ASSERT_FALSE(plan) << fault.lines;
    EXPECT_NE(plan.error().message.find(fault.message), std::string::npos) << plan.error().message;
    EXPECT_EQ(plan.error().where.line, fault.line) << fault.lines;
    EXPECT_FALSE(plan.error().hint.empty()) << fault.lines;
    const auto& where = plan.error().where;
    EXPECT_LE(where.offset + where.length, (kFirst + fault.lines).size());
  }
  EXPECT_FALSE(parse_plan(""));
  EXPECT_FALSE(parse_plan("counterpoise plan 2\nidea: any balance\n"));
  EXPECT_FALSE(parse_plan(kFirst + "title: no idea\n"));
}

TEST(Plan, ReadsBackWhatItWrites) {
  const std::string text = kFirst +
                           "title: Everything at once\nidea: 2 rows + 1 box against 3 columns\nlevel: 3\nslack: 0\nbefore: single\nwithout: wing, chain\nafter: nothing\ngivens: 24-28\n"
                           "symmetry: diagonal\nsymmetry: half-turn\nlook: left all but 1-2\nlook: cancelled none\nlook: r1,b5 at most 9\nlook: outside at least 3\nlook: right 4\nminimal: yes\n"
                           "pattern:\n5??|???|..x\n???|???|???\n???|???|???\n---+---+---\n???|???|???\n???|???|???\n???|???|???\n---+---+---\n???|???|???\n???|???|???\n???|???|??9\n";
  const auto plan = parse_plan(text);
  ASSERT_TRUE(plan) << plan.error().message;
  EXPECT_EQ(plan->looks.size(), 5U);
  EXPECT_EQ(plan->pattern.size(), 81U);
  EXPECT_EQ(plan->after.size(), 0U);
  const auto again = parse_plan(to_text(*plan));
  ASSERT_TRUE(again) << again.error().message << "\n" << to_text(*plan);
  EXPECT_EQ(*plan, *again);
  EXPECT_EQ(to_text(*plan), to_text(*again));
}

// Whatever one does to the text of a plan, it is read or refused, and what is read is written and read back the same.
TEST(Plan, SurvivesDamage) {
  const std::string text = kFirst + "title: t\nidea: c1,c2 against r3,2*b4\nlook: left all but 1\ngivens: 24-28\nsymmetry: half-turn\npattern:\n" +
                           "?????????\n?????????\n?????????\n?????????\n????x????\n?????????\n?????????\n?????????\n?????????\n";
  Rng rng(5);
  int read = 0;
  for (int i = 0; i < 3000; ++i) {
    std::string damaged = text;
    for (std::uint32_t n = 1 + rng.below(3); n > 0; --n) {
      const std::size_t at = 20 + rng.below(static_cast<std::uint32_t>(damaged.size() - 20));
      if (rng.below(2) == 0) damaged.erase(at, 1 + rng.below(4));
      else damaged[at] = "?x.5 1-9,:\nabr\xff"[rng.below(15)];
    }
    const auto plan = parse_plan(damaged);
    if (!plan) {
      EXPECT_LE(plan.error().where.offset, damaged.size());
      continue;
    }
    ++read;
    static_cast<void>(ground_of(*plan));
    const auto again = parse_plan(to_text(*plan));
    ASSERT_TRUE(again) << to_text(*plan) << again.error().message;
    EXPECT_EQ(*plan, *again) << damaged;
  }
  EXPECT_GT(read, 100);
}

TEST(PlanGround, SaysWhatCannotBeMet) {
  const auto fault = [](const std::string& lines) {
    const auto plan = parse_plan(kFirst + lines);
    EXPECT_TRUE(plan) << lines;
    const auto ground = ground_of(*plan);
    return ground ? std::string() : ground.error().message;
  };
  EXPECT_NE(fault("idea: any balance\nlook: left all\n").find("needs a balance whose houses the plan names"), std::string::npos);
  EXPECT_NE(fault("idea: c1 against r1\nlook: left at least 9\n").find("of these eight cells only 8 may hold a given"), std::string::npos);
  EXPECT_NE(fault("idea: 5 rows + 7 boxes against 4 columns\n").find("no such houses"), std::string::npos);
  std::string rows = "pattern:\nx????????\n";
  for (int i = 0; i < 7; ++i) rows += "?????????\n";
  EXPECT_NE(fault("idea: any balance\nsymmetry: half-turn\n" + rows + "????????.\n").find("r1c1 must hold a given, and r9c9"), std::string::npos);
  EXPECT_NE(fault("idea: any balance\n" + std::string("pattern:\n5???5????\n") + rows.substr(19) + "?????????\n").find("contradict"), std::string::npos);
  EXPECT_EQ(fault("idea: any balance\nsymmetry: half-turn\n" + rows + "?????????\n"), "");
}

TEST(PlanGround, SaysWhichLooksContradictEachOther) {
  const auto fault = [](const std::string& lines) {
    const auto plan = parse_plan(kFirst + lines);
    EXPECT_TRUE(plan) << lines;
    const auto ground = ground_of(*plan);
    if (ground) return std::string();
    EXPECT_FALSE(ground.error().hint.empty());
    return std::to_string(ground.error().where.line) + ":" + std::to_string(ground.error().where.column) + " " + ground.error().message;
  };
  const auto says = [&](const std::string& lines, const std::string& words) { EXPECT_NE(fault(lines).find(words), std::string::npos) << lines << fault(lines); };
  says("idea: any balance\nlook: r1 none\nlook: r1 at least 3\n", "4:7 'look: r1 at least 3' cannot be met: it contradicts 'look: r1 none'");
  says("idea: any balance\nlook: r1 at least 3\nlook: r1 none\n", "4:7 'look: r1 none' cannot be met: it contradicts");
  says("idea: any balance\nlook: r1,r2 at most 4\nlook: r1 at least 5\n", "contradicts 'look: r1,r2 at most 4'");
  says("idea: any balance\nlook: r1,c1 at least 12\nlook: c1 at most 3\n", "contradicts");  // at most eight of r1 outside c1
  EXPECT_EQ(fault("idea: any balance\nlook: r1,c1 at least 11\nlook: c1 at most 3\n"), "");
  says("idea: 2 rows against 1 column\nlook: left all but 20\n", "3:7 'look: left all but 20' cannot be met: there are only 16 cells there");
  says("idea: 2 rows against 1 column\nlook: left at least 17\n", "of these 16 cells only 16 may hold a given");
  EXPECT_EQ(fault("idea: 2 rows against 1 column\nlook: left all but 16\n"), "");
  // A box takes 3 or 0 cells of a row away: only some of the choices have three rows left over whole.
  EXPECT_EQ(fault("idea: 3 rows against 1 box\ngivens: 17-40\nlook: left all\n"), "");
  EXPECT_EQ(fault("idea: 3 rows against 1 box\ngivens: 17-40\nlook: left at least 27\n"), "");
  says("idea: any balance\ngivens: 20\nlook: r1,r2 all\nlook: r3 at least 3\n", "5:7 'look: r3 at least 3' cannot be met: the looks and the pattern ask for 21 givens");
  says("idea: any balance\nlook: r1,r2,r3,r4,r5 at most 3\nlook: r6,r7,r8,r9 at most 13\n", "leave room for 16 givens, and there shall be at least 17");
}

TEST(PlanGround, PicksHousesOfAKind) {
  const auto plan = parse_plan(kFirst + "idea: 2 rows + 1 box against 3 columns\n");
  ASSERT_TRUE(plan);
  const auto all = all_houses(plan->idea);
  // Two rows of one band leave six boxes free (9 pairs), of two bands three (27 pairs); 84 choices of three columns.
  EXPECT_EQ(all.size(), (9U * 6U + 27U * 3U) * 84U);
  Rng rng(1);
  for (int i = 0; i < 20; ++i) {
    const auto picked = pick_houses(plan->idea, rng);
    ASSERT_TRUE(picked);
    EXPECT_NE(std::find(all.begin(), all.end(), *picked), all.end());
  }
  // Houses that random picks hardly ever meet: five rows that leave a band free and its boxes (18), five columns that leave a
  // stack free and those two of its boxes that are not in the left pan (18).
  const auto rare = parse_plan(kFirst + "idea: 5 rows + 3 boxes against 5 columns + 2 boxes\n");
  ASSERT_TRUE(rare);
  EXPECT_TRUE(ground_of(*rare));
  const auto rare_ones = all_houses(rare->idea);
  EXPECT_EQ(rare_ones.size(), 18U * 18U);
  const auto one = pick_houses(rare->idea, rng);
  ASSERT_TRUE(one);
  EXPECT_NE(std::find(rare_ones.begin(), rare_ones.end(), *one), rare_ones.end());
  // 84 choices of three rows, 126 of four columns.
  EXPECT_EQ(all_houses(parse_plan(kFirst + "idea: 3 rows against 4 columns\n")->idea).size(), 84U * 126U);
}

}  // namespace
}  // namespace cp
