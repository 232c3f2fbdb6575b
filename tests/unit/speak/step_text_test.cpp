// SPDX-License-Identifier: Apache-2.0
// Exact sentences for hand-made reasons.
#include "speak/step_text.h"

#include <gtest/gtest.h>

#include "grid/notation.h"
#include "support/sample_balances.h"

namespace cp {
namespace {

using support::candidates_from;

House house(std::string_view name) { return standard_shape().parse_house(name).value(); }
Cell cell(std::string_view name) { return standard_shape().parse_cell(name).value(); }
Digit digit(int number) { return Digit(number - 1); }

Step lone(std::string_view technique, Constraint constraint, std::string_view placement) {
  return {technique, candidates_from(placement), {}, LoneReason{constraint}};
}

// Bases get the multiplier -1, covers +1.
Step weighed(std::string_view technique, const std::vector<Constraint>& bases, const std::vector<Constraint>& covers, std::string_view gone) {
  LinearReason reason;
  for (const Constraint& base : bases) reason.terms.push_back({base, -1});
  for (const Constraint& cover : covers) reason.terms.push_back({cover, 1});
  return {technique, {}, candidates_from(gone), reason};
}

Position empty_grid() { return Position(standard_shape()); }

TEST(StepText, LastCellOfAHouse) {
  Position before = empty_grid();
  for (int column = 0; column < 8; ++column) before.place(standard_shape().cell_at(0, column), Digit(column));
  EXPECT_EQ(step_text(lone("hidden-single", Constraint::of(house("r1"), digit(9)), "r1c9=9"), before), "r1c9 is the last open cell of row 1, so it is 9.");
}

TEST(StepText, NakedSingleByWhatTheCellSees) {
  Position before = empty_grid();
  for (int column = 0; column < 8; ++column) before.place(standard_shape().cell_at(0, column), Digit(column));
  EXPECT_EQ(step_text(lone("naked-single", Constraint::of(cell("r1c9")), "r1c9=9"), before), "r1c9 sees every digit but 9, so it is 9.");
}

TEST(StepText, NakedSingleAfterEliminations) {
  EXPECT_EQ(step_text(lone("naked-single", Constraint::of(cell("r1c9")), "r1c9=9"), empty_grid()), "Only 9 is left for r1c9, so r1c9 is 9.");
}

TEST(StepText, HiddenSingle) {
  EXPECT_EQ(step_text(lone("hidden-single", Constraint::of(house("b4"), digit(7)), "r5c2=7"), empty_grid()),
            "In box 4, 7 has only one place left: r5c2 is 7.");
}

TEST(StepText, LockedCandidatesNameThePlaces) {
  Position before = empty_grid();
  for (const Cell other : standard_shape().cells(house("b4"))) {
    if (other != cell("r5c1") && other != cell("r5c3")) before.eliminate({other, digit(7)});
  }
  const Step step = weighed("pointing", {Constraint::of(house("b4"), digit(7))}, {Constraint::of(house("r5"), digit(7))}, "r5c7=7 r5c8=7");
  EXPECT_EQ(step_text(step, before), "In box 4, 7 can only go into row 5: r5c1 and r5c3. So 7 leaves r5c7 and r5c8.");
}

TEST(StepText, NakedPair) {
  const Step step = weighed("naked-pair", {Constraint::of(cell("r3c7")), Constraint::of(cell("r3c9"))},
                            {Constraint::of(house("r3"), digit(2)), Constraint::of(house("r3"), digit(5))}, "r3c1=2 r3c2=2 r3c2=5");
  EXPECT_EQ(step_text(step, empty_grid()),
            "r3c7 and r3c9 have only 2 and 5 left between them, and they share row 3. So nothing else in that house can be one of these digits: "
            "2 leaves r3c1 and r3c2; 5 leaves r3c2.");
}

TEST(StepText, HiddenPair) {
  const Step step = weighed("hidden-pair", {Constraint::of(house("r3"), digit(2)), Constraint::of(house("r3"), digit(5))},
                            {Constraint::of(cell("r3c7")), Constraint::of(cell("r3c9"))}, "r3c7=1 r3c7=4 r3c9=1");
  EXPECT_EQ(step_text(step, empty_grid()),
            "In row 3, 2 and 5 can only go into r3c7 and r3c9. So these two cells hold nothing else: 1 leaves r3c7 and r3c9; 4 leaves r3c7.");
}

TEST(StepText, XWing) {
  const Step step = weighed("x-wing", {Constraint::of(house("r2"), digit(4)), Constraint::of(house("r7"), digit(4))},
                            {Constraint::of(house("c3"), digit(4)), Constraint::of(house("c8"), digit(4))}, "r1c3=4");
  EXPECT_EQ(step_text(step, empty_grid()),
            "In rows 2 and 7, every place for 4 lies in columns 3 and 8. Each of these two houses gets its 4 there, so 4 leaves r1c3.");
}

TEST(StepText, FinnedFishCountsTheRoom) {
  const Step step = weighed("finned-fish", {Constraint::of(house("r2"), digit(4)), Constraint::of(house("r7"), digit(4))},
                            {Constraint::of(house("c3"), digit(4)), Constraint::of(house("c8"), digit(4)), Constraint::of(house("b1"), digit(4))}, "r1c3=4");
  EXPECT_EQ(step_text(step, empty_grid()),
            "Rows 2 and 7 need two 4s, all within columns 3 and 8 with box 1, which have room for three. So there is room for only one more, and a 4 "
            "where it would use up two cannot be: 4 leaves r1c3.");
}

TEST(StepText, MixedCountsSayWhatIsCounted) {
  const Step step = weighed("mixed", {Constraint::of(cell("r1c1")), Constraint::of(house("r2"), digit(4))},
                            {Constraint::of(house("c1"), digit(4)), Constraint::of(house("b1"), digit(6))}, "r5c1=4");
  EXPECT_EQ(step_text(step, empty_grid()),
            "r1c1 needs a digit and the 4 of row 2 needs a place. Whatever they take lies within the 4 of column 1 and the 6 of box 1, "
            "and each of these can be taken once. So nothing else can be taken there: 4 leaves r5c1.");
}

TEST(StepText, BalanceInShort) {
  const support::SampleBalance sample = support::exact_sample();
  EXPECT_EQ(step_text(sample.step, sample.before),
            "Weigh columns 1, 3 and 8 against row 8 and box 4. After everything known has cancelled, the open left cells hold exactly 5 and 8, and the "
            "open right cells hold exactly 2 and 7: 5 leaves r4c2 and r8c5.");
}

TEST(StepText, BalanceWithASharedDigitInShort) {
  const support::SampleBalance sample = support::cases_sample();
  EXPECT_EQ(step_text(sample.step, sample.before),
            "Weigh columns 1, 2, 3, 6, 7 and 9 against row 3 with boxes 4, 6 and 7. After everything known has cancelled, the open left cells hold 1, 1, "
            "2, 3, 4, 4, 5, 5, 5, 5, 6, 7, 7, 7, 8 and 9, and one digit more, which the open right cells must repeat. Whichever digit that is, 7 leaves "
            "r2c9.");
}

TEST(StepText, TechniquesAsWords) {
  EXPECT_EQ(technique_words("naked-pair"), "naked pair");
  EXPECT_EQ(technique_words("x-wing"), "X-wing");
}

}  // namespace
}  // namespace cp
