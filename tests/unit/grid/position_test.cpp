// SPDX-License-Identifier: Apache-2.0
#include "grid/position.h"

#include <gtest/gtest.h>

#include "support/data_rows.h"
#include "support/random_states.h"

namespace cp {
namespace {

using support::read;

TEST(Position, StartsWithEveryCandidate) {
  // 729 candidates (Knuth, TAOCP 7.2.2.1, from memory).
  EXPECT_EQ(Position(standard_shape()).candidate_count(), 729);
  EXPECT_EQ(Position(*find_shape("16x16")).candidate_count(), 4096);
  EXPECT_TRUE(Position(standard_shape()).is_consistent());
}

TEST(Position, PlacingStrikesTheDigitFromTwentyPeersAndEightDigitsFromTheCell) {
  Position position(standard_shape());
  position.place(Cell(40), Digit(4));
  EXPECT_EQ(position.candidate_count(), 729 - 20 - 8);
  EXPECT_EQ(position.digit_at(Cell(40)), Digit(4));
  EXPECT_FALSE(position.digit_at(Cell(0)).has_value());
  EXPECT_TRUE(position.is_placed_in(standard_shape().box(4), Digit(4)));
  EXPECT_TRUE(position.places(standard_shape().row(4), Digit(4)).is_empty());
  EXPECT_FALSE(position.givens().has(Cell(40)));
  position.place_given(Cell(0), Digit(0));
  EXPECT_TRUE(position.givens().has(Cell(0)));
}

TEST(Position, StrikesACandidateOnceAndNeverAPlacedDigit) {
  Position position(standard_shape());
  EXPECT_TRUE(position.eliminate({Cell(3), Digit(5)}));
  EXPECT_FALSE(position.eliminate({Cell(3), Digit(5)}));
  position.place(Cell(3), Digit(0));
  EXPECT_FALSE(position.eliminate({Cell(3), Digit(0)}));
  EXPECT_EQ(position.digit_at(Cell(3)), Digit(0));
}

TEST(Position, LeavesACellWithOneCandidateOpen) {
  Position position(*find_shape("4x4"));
  for (const int digit : {0, 1, 2}) position.eliminate({Cell(0), Digit(digit)});
  EXPECT_EQ(position.candidates(Cell(0)).size(), 1);
  EXPECT_FALSE(position.is_placed(Cell(0)));
  EXPECT_FALSE(position.has_clash());
}

TEST(Position, ShowsThreeKindsOfClash) {
  Position empty_cell(*find_shape("4x4"));
  for (const Digit digit : empty_cell.shape().digits()) empty_cell.eliminate({Cell(0), digit});
  EXPECT_TRUE(empty_cell.has_clash());
  Position no_place(*find_shape("4x4"));
  for (const Cell cell : no_place.shape().cells(House(0))) no_place.eliminate({cell, Digit(0)});
  EXPECT_TRUE(no_place.has_clash());
  Position twice(*find_shape("4x4"));
  twice.place(Cell(0), Digit(0));
  twice.place(Cell(3), Digit(0));
  EXPECT_TRUE(twice.has_clash());
}

TEST(Position, KeepsItsTwoRepresentationsInAgreementUnderRandomOperations) {
  for (const Shape* shape : all_shapes()) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
      if (shape->side() > 9 && seed > 5) break;
      const Position position = support::random_state(*shape, seed);
      ASSERT_TRUE(position.is_consistent());
      int candidates = 0;
      for (const Cell cell : shape->all_cells()) candidates += position.candidates(cell).size();
      EXPECT_EQ(position.candidate_count(), candidates);
      for (const Digit digit : shape->digits()) EXPECT_TRUE(position.places(digit).is_subset_of(position.open()));
      EXPECT_EQ(position.open() | position.placed(), shape->all_cells());
    }
  }
}

TEST(Position, IsCompleteWhenEveryCellHasADigit) {
  const FullGrid grid = random_grid(standard_shape(), 1);
  Position position(standard_shape());
  for (const Cell cell : standard_shape().all_cells()) {
    EXPECT_FALSE(position.is_complete());
    position.place(cell, grid.at(cell));
  }
  EXPECT_TRUE(position.is_complete());
  EXPECT_FALSE(position.has_clash());
  EXPECT_EQ(position.candidate_count(), 81);
}

TEST(Position, DiffersWhenOnlyTheGivensDiffer) {
  Position placed(standard_shape());
  Position given(standard_shape());
  placed.place(Cell(0), Digit(0));
  given.place_given(Cell(0), Digit(0));
  EXPECT_NE(placed, given);
  EXPECT_EQ(placed, Position(placed));
}

}  // namespace
}  // namespace cp
