// SPDX-License-Identifier: Apache-2.0
// Sentences for the deductions inside a case, on published puzzle gecode6 after the plain techniques: row 5 against column 6.
#include "speak/case_words.h"

#include <gtest/gtest.h>

#include "grid/notation.h"
#include "support/sample_balances.h"

namespace cp {
namespace {

using support::candidates_from;

constexpr std::string_view kPosition = R"(
1    246 2456 | 9    24568 7     | 258 258  3
36   8   2456 | 1346 23456 1235  | =9  7    124
37   247 9    | 134  23458 12358 | 6   1258 1248

=5   =3  7    | 2    168   9     | 4   168  168
4    1   26   | 367  3678  38    | 28  9    5
69   269 8    | 5    16    4     | 3   126  =7

689  469 3    | 14   2459  125   | 7   2568 268
6789 5   16   | 37   2379  23    | 128 4    268
2    47  14   | 8    457   6     | 15  =3   9
)";

class CaseWords : public testing::Test {
 protected:
  CaseWords() : position_(parse_position(kPosition).value()) {
    reason_.weights = support::weights_from("r5 -c6");
    scales_ = lay_out(reason_, position_);
  }

  // One 2 is shared for certain; `other` is supposed besides.
  static ShareCase supposing(int other) {
    ShareCase share_case;
    ++share_case.shares[1];
    ++share_case.shares[static_cast<std::size_t>(other - 1)];
    return share_case;
  }
  static DigitSet digits(std::initializer_list<int> numbers) {
    DigitSet set;
    for (const int number : numbers) set.add(Digit(number - 1));
    return set;
  }
  static House house(std::string_view name) { return standard_shape().parse_house(name).value(); }

  Position position_;
  BalanceReason reason_;
  Scales scales_;
};

TEST_F(CaseWords, CountsAndCoversFollowOneAnother) {
  ShareCase share_case = supposing(3);
  share_case.lemmas = {{Lemma::Kind::kCount, Pan::kLeft, digits({3, 7}), {}, candidates_from("r5c4=6 r5c5=6 r5c5=8")},
                       {Lemma::Kind::kCount, Pan::kLeft, digits({6}), {}, candidates_from("r5c3=2")},
                       {Lemma::Kind::kCover, Pan::kLeft, digits({2}), {house("c7")}, candidates_from("r1c7=2 r8c7=2")}};
  EXPECT_EQ(lemmas_in_words(share_case, scales_, position_),
            (std::vector<std::string>{
                "On the left, only r5c4 and r5c5 can take the 3 and the 7 that are needed, and they hold nothing else. So 6 leaves r5c4 and r5c5; 8 leaves r5c5.",
                "Then on the left, only r5c3 can take the 6 that is needed. So 2 leaves r5c3.",
                "Next, on the left, the 2 has to go into column 7 (r5c7). So 2 leaves r1c7 and r8c7."}));
  EXPECT_EQ(removed_in_case(share_case).size(), 6U);
}

TEST_F(CaseWords, ABrokenCoverSaysWhatThereIsRoomFor) {
  ShareCase share_case = supposing(2);
  share_case.is_impossible = true;
  share_case.lemmas = {{Lemma::Kind::kCover, Pan::kLeft, digits({2}), {house("r5")}, {}}};
  EXPECT_EQ(lemmas_in_words(share_case, scales_, position_),
            (std::vector<std::string>{"The left side needs two 2s, but all its places for 2 (r5c3 and r5c7) lie in row 5, which has room for only one."}));
}

TEST_F(CaseWords, ABreakAfterOtherDeductionsHasOneBut) {
  ShareCase share_case = supposing(8);
  share_case.is_impossible = true;
  share_case.lemmas = {{Lemma::Kind::kCount, Pan::kRight, digits({8}), {}, candidates_from("r3c6=1 r3c6=2 r3c6=3 r3c6=5")},
                       {Lemma::Kind::kCount, Pan::kRight, digits({3}), {}, {}}};
  share_case.shares[2] = 3;
  EXPECT_EQ(lemmas_in_words(share_case, scales_, position_).back(), "But then the right side needs three 3s, and only r2c6 and r8c6 can take one.");
}

TEST_F(CaseWords, SightNamesThePlacesAndWhoSeesThem) {
  ShareCase share_case = supposing(3);
  share_case.lemmas = {{Lemma::Kind::kSight, Pan::kLeft, digits({6}), {}, candidates_from("r4c5=6")}};
  EXPECT_EQ(lemmas_in_words(share_case, scales_, position_).front(),
            "The left side needs a 6, in r5c3, r5c4 or r5c5. But r4c5 sees all of these cells, so 6 leaves r4c5.");
}

TEST_F(CaseWords, CopiesForcedIntoBothSidesTogether) {
  const ForcedCopies forced{Digit(7), Pan::kBoth, {house("r5")}};
  EXPECT_EQ(forced_in_words(forced, scales_, position_),
            "In row 5, 8 can only go into open cells of the two remainders. So the two sides together hold at least one 8, while the tally asks for none there: "
            "at least one 8 is shared, for a shared digit stands on both sides.");
}

TEST_F(CaseWords, SuppositionsNameTheSharesBeyondTheKnownOnes) {
  DigitCounts known{};
  known[1] = 1;
  EXPECT_EQ(supposed_in_words(supposing(8), known, standard_shape()), "an 8");
  EXPECT_EQ(supposed_in_words(supposing(2), known, standard_shape()), "a 2");
  EXPECT_EQ(supposed_in_words(supposing(2), DigitCounts{}, standard_shape()), "two 2s");
  EXPECT_EQ(supposed_in_words(supposing(3), DigitCounts{}, standard_shape()), "a 2 and a 3");
}

}  // namespace
}  // namespace cp
