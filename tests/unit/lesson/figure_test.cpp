// SPDX-License-Identifier: Apache-2.0
#include "lesson/figure.h"

#include <gtest/gtest.h>

#include "support/sample_balances.h"

namespace cp {
namespace {

const BalanceReason& reason_of(const support::SampleBalance& sample) { return *std::get_if<BalanceReason>(&sample.step.reason); }

TEST(Figure, ABalanceShowsBothRemaindersAndWhatFalls) {
  const support::SampleBalance sample = support::exact_sample();
  const Figure figure = balance_figure(reason_of(sample), sample.before, sample.step.eliminations);
  EXPECT_EQ(figure.left.size(), 18);
  EXPECT_EQ(figure.right.size(), 9);
  EXPECT_FALSE(figure.left.meets(figure.right));
  EXPECT_EQ(figure.struck, sample.step.eliminations);
  for (const Candidate& gone : figure.struck) EXPECT_TRUE(figure.candidates.has(gone.cell));
}

TEST(Figure, TheDescriptionSaysWhatThePictureShows) {
  const support::SampleBalance sample = support::exact_sample();
  const std::string words = balance_figure(reason_of(sample), sample.before, sample.step.eliminations).description;
  for (const std::string_view part :
       {"Left pan: columns 1, 3 and 8.", "Right pan: row 8 and box 4.", "Cancelled: r4c1,", "Struck out: 5 leaves r4c2 and r8c5.",
        "Row 1: blank, blank, 6, blank, blank, 2, blank, 3, 9.", "r4c2: 2, 5 or 7;"}) {
    EXPECT_NE(words.find(part), std::string::npos) << part << "\nnot in: " << words;
  }
}

TEST(PanPicture, BeforeTheTallyEverythingLiesThere) {
  const support::SampleBalance sample = support::exact_sample();
  const PanPicture pans = balance_pans(reason_of(sample), sample.before, false);
  EXPECT_EQ(pans.left.open, 2);
  EXPECT_EQ(pans.right.open, 2);
  EXPECT_EQ(pans.surplus, 1);
  EXPECT_NE(pans.description.find("The surplus lies in the right pan too: each digit once."), std::string::npos) << pans.description;
}

TEST(PanPicture, AfterTheTallyOnlyTheDifferenceIsLeft) {
  const support::SampleBalance sample = support::exact_sample();
  const PanPicture pans = balance_pans(reason_of(sample), sample.before, true);
  EXPECT_EQ(pans.description,
            "Two pans on a level beam. Equal digits have been taken off. Left pan: 2 and 7 and two open cells, of which the tally fills 5 and 8. Right pan: 5 "
            "and 8 and two open cells, of which the tally fills 2 and 7.");
}

TEST(PanPicture, SharedDigitsFillOpenCellsOnBothSides) {
  const support::SampleBalance sample = support::cases_sample();
  DigitCounts shares{};
  shares[2] = 1;
  const PanPicture without = balance_pans(reason_of(sample), sample.before, true);
  const PanPicture with = balance_pans(reason_of(sample), sample.before, true, shares);
  EXPECT_EQ(with.left.owed[2], without.left.owed[2] + 1);
  EXPECT_EQ(with.right.owed[2], without.right.owed[2] + 1);
}

TEST(TallyTable, RowsAddUp) {
  const support::SampleBalance sample = support::cases_sample();
  const TallyTable table = tally_table(reason_of(sample), sample.before);
  for (std::size_t i = 0; i < 9; ++i) EXPECT_EQ(table.tally[i], table.surplus + table.known_right[i] - table.known_left[i]);
}

}  // namespace
}  // namespace cp
