// SPDX-License-Identifier: Apache-2.0
#include "speak/balance_story.h"

#include <gtest/gtest.h>

#include "support/sample_balances.h"

namespace cp {
namespace {

using Kind = StoryPart::Kind;

std::vector<StoryPart> story_of(const support::SampleBalance& sample) {
  return balance_story(*std::get_if<BalanceReason>(&sample.step.reason), sample.before, sample.step.eliminations);
}

std::vector<Kind> kinds_of(const std::vector<StoryPart>& story) {
  std::vector<Kind> kinds;
  for (const StoryPart& part : story) kinds.push_back(part.kind);
  return kinds;
}

const StoryPart& part_of(const std::vector<StoryPart>& story, Kind kind) {
  for (const StoryPart& part : story) {
    if (part.kind == kind) return part;
  }
  ADD_FAILURE() << "the story lacks a part";
  return story.front();
}

TEST(BalanceStory, GoesFromHousesToWhatFalls) {
  EXPECT_EQ(kinds_of(story_of(support::exact_sample())),
            (std::vector<Kind>{Kind::kHouses, Kind::kCancel, Kind::kKnown, Kind::kTally, Kind::kSlack, Kind::kFalls}));
}

TEST(BalanceStory, HousesAndSurplus) {
  const auto story = story_of(support::exact_sample());
  const StoryPart& part = part_of(story, Kind::kHouses);
  EXPECT_EQ(part.heading, "Weigh columns 1, 3 and 8 against row 8 and box 4");
  EXPECT_EQ(part.paragraphs.at(1).text,
            "Think of a pair of scales. Into the left pan put columns 1, 3 and 8; into the right pan put row 8 and box 4. We call this a balance. The left "
            "pan holds three houses, the right pan two: so the left pan holds whatever the right pan holds, and one more of each digit from 1 to 9. That "
            "excess is the surplus.");
}

TEST(BalanceStory, CancellingAndRemainders) {
  const auto story = story_of(support::exact_sample());
  const StoryPart& part = part_of(story, Kind::kCancel);
  EXPECT_EQ(part.paragraphs.at(1).text,
            "What stays in a pan is its remainder: 18 cells on the left, nine on the right. The left remainder holds what the right one holds, and one more "
            "of each digit from 1 to 9.");
}

TEST(BalanceStory, TheTallyHasAWorkedDigit) {
  const auto story = story_of(support::exact_sample());
  const StoryPart& part = part_of(story, Kind::kTally);
  EXPECT_EQ(part.paragraphs.at(0).text,
            "Equal digits on both sides cancel as well. Take the 2s: the right side shows none, the surplus asks for one more, so the left side has to come "
            "to one; it shows two. So the open right cells must hold one more 2 than the open left cells. What is left of this account for each digit is "
            "the tally.");
  EXPECT_EQ(part.paragraphs.at(1).text,
            "It says: the open left cells must hold one more 5 and one more 8 than the open right cells, and the open right cells one more 2 and one more 7 "
            "than the left ones.");
}

TEST(BalanceStory, SlackZero) {
  const auto story = story_of(support::exact_sample());
  const StoryPart& part = part_of(story, Kind::kSlack);
  EXPECT_EQ(part.paragraphs.at(0).text,
            "The left side has two open cells (r1c1 and r3c8), and the tally asks for two digits there: 5 and 8. Nothing is left over: we say that the "
            "slack is zero.");
  EXPECT_EQ(part.paragraphs.at(1).text, "So the open left cells hold exactly 5 and 8, and the open right cells hold exactly 2 and 7.");
}

TEST(BalanceStory, WhatFallsIsSaidOnce) {
  const auto story = story_of(support::exact_sample());
  const StoryPart& part = part_of(story, Kind::kFalls);
  ASSERT_EQ(part.paragraphs.size(), 1U);
  EXPECT_EQ(part.paragraphs[0].text, "The open right cells hold one 2 and one 7 and nothing else. So 5 leaves r4c2 and r8c5.");
  EXPECT_EQ(part.removed, support::candidates_from("r4c2=5 r8c5=5"));
}

TEST(BalanceStory, SharesKnownBeforehand) {
  const auto story = story_of(support::cases_sample());
  const StoryPart& part = part_of(story, Kind::kForced);
  EXPECT_EQ(part.paragraphs.at(0).text,
            "In column 9, 3 can only go into open left cells. So the left side holds at least one 3, while the tally asks for none there: at least one 3 is "
            "shared.");
  EXPECT_EQ(part.paragraphs.at(1).text,
            "In boxes 1, 3, 5 and 9, 5 can only go into open left cells, and no cell serves two of these houses. So the left side holds at least four 5s, "
            "while the tally asks for only three there: at least one 5 is shared.");
  EXPECT_EQ(part.paragraphs.back().text, "That leaves one shared digit unknown.");
}

TEST(BalanceStory, CasesWithTheSameArgumentAreToldTogether) {
  const auto story = story_of(support::cases_sample());
  std::vector<const StoryPart*> parts;
  for (const StoryPart& part : story) {
    if (part.kind == Kind::kCase) parts.push_back(&part);
  }
  ASSERT_EQ(parts.size(), 2U);
  EXPECT_EQ(parts[0]->heading, "Digits that cannot be shared");
  ASSERT_EQ(parts[0]->paragraphs.size(), 3U);
  EXPECT_EQ(parts[0]->paragraphs[0].text,
            "Suppose the other shared digit is a 3. The right side needs two 3s, one 5 and one 7, but only r4c8, r5c8 and r6c8 can take any of them. So this "
            "case cannot be.");
  EXPECT_EQ(parts[1]->heading, "Suppose the other shared digit is a 1, a 2 or a 4");
  ASSERT_EQ(parts[1]->paragraphs.size(), 1U);
  EXPECT_EQ(parts[1]->paragraphs[0].text,
            "The left side needs three 7s, in r1c7, r1c9, r2c6, r2c7, r2c9, r7c9, r8c6, r8c7, r8c9 or r9c9. With a 7 in r2c9, the other places would all lie "
            "in row 8, which is too few. So 7 leaves r2c9.");
}

// The supposition stands in the heading.
TEST(BalanceStory, ACaseOfItsOwnHasOneDeductionAParagraph) {
  support::SampleBalance sample = support::cases_sample();
  auto& reason = *std::get_if<BalanceReason>(&sample.step.reason);
  ShareCase& share_case = reason.cases.back();
  share_case.lemmas.insert(share_case.lemmas.begin(), share_case.lemmas.front());
  share_case.is_impossible = false;
  const auto story = story_of(sample);
  int found = 0;
  for (const StoryPart& part : story) {
    if (part.heading != "Suppose the other shared digit is a 1") continue;
    ++found;
    EXPECT_EQ(part.paragraphs.size(), 2U);
    EXPECT_TRUE(part.shares_are_supposed);
  }
  EXPECT_EQ(found, 1);
}

TEST(BalanceStory, TheVerdictOfTheCases) {
  const auto story = story_of(support::cases_sample());
  const StoryPart& part = part_of(story, Kind::kFalls);
  EXPECT_EQ(part.paragraphs.at(0).text,
            "We do not know which of the three surviving cases is the true one. But what falls in each of them falls for good.");
  EXPECT_EQ(part.paragraphs.at(1).text, "One candidate falls: 7 leaves r2c9.");
}

TEST(BalanceStory, ExhaustiveResultsSaySo) {
  support::SampleBalance sample = support::exact_sample();
  auto& reason = *std::get_if<BalanceReason>(&sample.step.reason);
  reason.level = 5;
  reason.cases.clear();
  const auto story = story_of(sample);
  EXPECT_EQ(kinds_of(story).back(), Kind::kFalls);
  EXPECT_NE(story.back().paragraphs.at(0).text.find("checked exhaustively"), std::string::npos);
  EXPECT_NE(balance_text(reason, sample.before, sample.step.eliminations).find("no filling of the open cells survives"), std::string::npos);
}

// Each word of ours is explained where it first occurs, and the term stands in its paragraph.
TEST(BalanceStory, DefinesItsWords) {
  std::vector<std::string> terms;
  for (const StoryPart& part : story_of(support::cases_sample())) {
    for (const Paragraph& paragraph : part.paragraphs) {
      if (paragraph.term.empty()) continue;
      terms.push_back(paragraph.term);
      EXPECT_NE(paragraph.text.find(paragraph.term), std::string::npos) << paragraph.term;
    }
  }
  EXPECT_EQ(terms, (std::vector<std::string>{"house", "balance", "cancel", "remainder", "tally", "slack", "shared"}));
}

TEST(BalanceStory, NeverSaysZeroCells) {
  for (const support::SampleBalance& sample : {support::exact_sample(), support::cases_sample()}) {
    for (const StoryPart& part : story_of(sample)) {
      for (const Paragraph& paragraph : part.paragraphs) {
        EXPECT_EQ(paragraph.text.find("no cells"), std::string::npos) << paragraph.text;
        EXPECT_EQ(paragraph.text.find(" 0 "), std::string::npos) << paragraph.text;
        EXPECT_EQ(paragraph.text.find("  "), std::string::npos) << paragraph.text;
        EXPECT_EQ(paragraph.text.back(), '.') << paragraph.text;
      }
    }
  }
}

TEST(BalanceText, TellsTheWholeArgument) {
  const support::SampleBalance sample = support::exact_sample();
  EXPECT_EQ(balance_text(*std::get_if<BalanceReason>(&sample.step.reason), sample.before, sample.step.eliminations),
            "Weigh columns 1, 3 and 8 against row 8 and box 4. Nine cells lie in both pans and cancel; 18 cells stay on the left and nine on the right. The "
            "left side holds one more of each digit from 1 to 9. By the digits known so far, the open left cells must hold one more 5 and one more 8 than "
            "the open right cells, and the open right cells one more 2 and one more 7 than the left ones. So the open left cells hold exactly 5 and 8, and "
            "the open right cells hold exactly 2 and 7. The open right cells hold one 2 and one 7 and nothing else. So 5 leaves r4c2 and r8c5.");
}

}  // namespace
}  // namespace cp
