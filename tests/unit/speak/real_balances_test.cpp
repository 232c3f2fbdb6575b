// SPDX-License-Identifier: Apache-2.0
// Words about balances that the engine proves: the bookkeeping of speak must agree with that of balance, which was written
// apart from it, and every sentence must be fit to be read aloud.
#include <gtest/gtest.h>

#include "balance/infer.h"
#include "balance/weighing.h"
#include "base/rng.h"
#include "deduce/basics.h"
#include "speak/balance_story.h"
#include "speak/scales.h"
#include "support/data_rows.h"

namespace cp {
namespace {

// A random left side of rows and boxes against a right side of columns and boxes; the surplus is never negative.
std::vector<Weight> random_weights(const Shape& shape, Rng& rng) {
  std::vector<Weight> weights;
  for (int i = 0; i < shape.side(); ++i) {
    if (rng.below(2) == 0) weights.push_back({rng.below(3) == 0 ? shape.box(i) : shape.row(i), 1});
    if (rng.below(2) == 0) weights.push_back({rng.below(4) == 0 ? shape.box((i + 4) % shape.side()) : shape.column(i), -1});
  }
  int surplus = 0;
  for (const Weight& weight : weights) surplus += weight.weight;
  for (Weight& weight : weights) weight.weight = surplus < 0 ? -weight.weight : weight.weight;
  return weights;
}

Position stuck(std::string_view name) {
  Position position = support::read(support::published_puzzle(name));
  run_basics(position);
  return position;
}

TEST(RealBalances, TwoBookkeepersAgree) {
  Rng rng(11);
  int compared = 0;
  for (const std::string_view name : {"gecode5", "gecode14", "Escargot"}) {
    const Position position = stuck(name);
    for (int i = 0; i < 300; ++i) {
      const Weighing theirs = weigh(position, random_weights(position.shape(), rng));
      BalanceReason reason;
      reason.weights = theirs.weights;
      const Scales ours = lay_out(reason, position);
      EXPECT_EQ(ours.left.cells, theirs.left);
      EXPECT_EQ(ours.right.cells, theirs.right);
      EXPECT_EQ(ours.cancelled, theirs.cancelled);
      EXPECT_EQ(ours.left.known, theirs.known_left);
      EXPECT_EQ(ours.right.known, theirs.known_right);
      EXPECT_EQ(ours.tally, theirs.tally);
      EXPECT_EQ(ours.slack, theirs.slack);
      ++compared;
    }
  }
  EXPECT_EQ(compared, 900);
}

void expect_fit_to_be_read(const std::string& text) {
  for (const std::string_view flaw : {"  ", " 0 ", "no cells", " ,", "..", " .", ": .", ":.", " one cells", "One cells", "one 1s", "but then then"}) {
    EXPECT_EQ(text.find(flaw), std::string::npos) << "'" << flaw << "' in: " << text;
  }
  ASSERT_FALSE(text.empty());
  EXPECT_EQ(text.back(), '.') << text;
  EXPECT_FALSE(text[0] >= 'a' && text[0] <= 'z' && text[0] != 'r') << text;
}

TEST(RealBalances, SentencesAreFitToBeRead) {
  Rng rng(23);
  int told = 0;
  for (const std::string_view name : {"gecode5", "gecode14", "gecode7", "Escargot"}) {
    const Position position = stuck(name);
    for (int i = 0; i < 4000 && told < 400; ++i) {
      const Weighing weighing = weigh(position, random_weights(position.shape(), rng));
      if (weighing.slack < 0 || weighing.slack > 3) continue;
      const Inference inference = infer(position, weighing, 4, true);
      for (const LevelResult& result : inference.levels) {
        ++told;
        for (const StoryPart& part : balance_story(result.reason, position, result.eliminations)) {
          for (const Paragraph& paragraph : part.paragraphs) expect_fit_to_be_read(paragraph.text);
        }
        const std::string text = balance_text(result.reason, position, result.eliminations);
        expect_fit_to_be_read(text);
        for (const Candidate& gone : result.eliminations) EXPECT_NE(text.find(position.shape().name_of(gone.cell)), std::string::npos) << text;
      }
    }
  }
  EXPECT_GE(told, 100);
}

}  // namespace
}  // namespace cp
