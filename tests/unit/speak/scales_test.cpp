// SPDX-License-Identifier: Apache-2.0
// Remainders of well-known balances. The ring theorem: 36 against 36 cells, 20 cancel, 16 stay on each side (popular articles
// on set equivalence, 2021-2024). The other counts were worked out by hand from "a rows against b columns cancel a*b cells".
#include "speak/scales.h"

#include <gtest/gtest.h>

#include "support/data_rows.h"
#include "support/sample_balances.h"

namespace cp {
namespace {

Scales on_empty_grid(std::string_view weights) {
  BalanceReason reason;
  reason.weights = support::weights_from(weights);
  return lay_out(reason, Position(standard_shape()));
}

TEST(Scales, RingTheorem) {
  const Scales ring = lay_out(support::ring_reason(), Position(standard_shape()));
  EXPECT_EQ(ring.surplus, 0);
  EXPECT_EQ(ring.cancelled.size(), 20);
  EXPECT_EQ(ring.left.cell_count, 16);
  EXPECT_EQ(ring.right.cell_count, 16);
  // The four corners of 2x2 cells, against the ring round box 5.
  EXPECT_TRUE(ring.left.cells.has(standard_shape().cell_at(1, 1)));
  EXPECT_TRUE(ring.right.cells.has(standard_shape().cell_at(2, 2)));
  EXPECT_FALSE(ring.right.cells.has(standard_shape().cell_at(4, 4)));
}

TEST(Scales, SurplusOfOne) {
  const Scales scales = on_empty_grid("b1 b3 b5 b7 b9 -r1 -r9 -c1 -c9");
  EXPECT_EQ(scales.surplus, 1);
  EXPECT_EQ(scales.left.cell_count, 25);
  EXPECT_EQ(scales.right.cell_count, 16);
}

TEST(Scales, CellsCoveredTwiceCountTwice) {
  const Scales scales = on_empty_grid("r2 r5 r8 c2 c5 c8 -b1 -b3 -b5 -b7 -b9");
  EXPECT_EQ(scales.surplus, 1);
  EXPECT_EQ(scales.left.cell_count, 29);
  EXPECT_EQ(scales.right.cell_count, 20);
  EXPECT_EQ(scales.left.repeated.size(), 4);
}

// In a full grid everything is known, so the tally of every balance must come out as zero for each digit.
TEST(Scales, TalliesVanishOnSolutions) {
  int checked = 0;
  for (const support::PublishedPuzzle& row : support::published_puzzles()) {
    const Position solved = support::read(row.solution);
    for (const std::string_view weights : {"c1 c2 c8 c9 -r3 -r7 -b4 -b6", "b1 b3 b5 b7 b9 -r1 -r9 -c1 -c9", "r2 r5 r8 c2 c5 c8 -b1 -b3 -b5 -b7 -b9"}) {
      BalanceReason reason;
      reason.weights = support::weights_from(weights);
      EXPECT_EQ(lay_out(reason, solved).tally, DigitCounts{}) << row.name;
      ++checked;
    }
  }
  EXPECT_EQ(checked, 165);
}

TEST(Scales, AgreesWithTheReasonItLaysOut) {
  for (const support::SampleBalance& sample : {support::exact_sample(), support::cases_sample()}) {
    const auto& reason = *std::get_if<BalanceReason>(&sample.step.reason);
    const Scales scales = lay_out(reason, sample.before);
    EXPECT_EQ(scales.tally, reason.tally);
    EXPECT_EQ(scales.slack, reason.slack);
    EXPECT_EQ(scales.surplus, reason.surplus);
  }
}

}  // namespace
}  // namespace cp
