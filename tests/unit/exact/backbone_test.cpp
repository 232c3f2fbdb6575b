// SPDX-License-Identifier: Apache-2.0
#include "exact/backbone.h"

#include <gtest/gtest.h>

#include "oracle/cadical_oracle.h"
#include "support/data_rows.h"
#include "support/random_states.h"

namespace cp {
namespace {

using support::published_puzzle;
using support::read;

// Asks CaDiCaL about every candidate.
void expect_backbone_of_cadical(const Position& position, const std::string& what) {
  const Backbone backbone = find_backbone(position);
  ASSERT_TRUE(backbone.is_complete) << what;
  oracle::CadicalOracle oracle(position);
  EXPECT_EQ(backbone.has_solution, oracle.find().has_value()) << what;
  for (const Cell cell : position.shape().all_cells()) {
    EXPECT_EQ(backbone.possible[cell.index] | backbone.never[cell.index], position.candidates(cell)) << what;
    EXPECT_TRUE((backbone.possible[cell.index] & backbone.never[cell.index]).is_empty()) << what;
    EXPECT_TRUE(backbone.unknown[cell.index].is_empty()) << what;
    for (const Digit digit : position.candidates(cell)) {
      ASSERT_EQ(backbone.is_possible({cell, digit}), oracle.is_possible({cell, digit}))
          << what << " " << position.shape().name_of(cell) << "=" << Shape::name_of(digit);
    }
  }
}

TEST(Backbone, OfNineByNineStatesIsTheOneOfCadical) {
  for (std::uint64_t seed = 20'000; seed < 20'200; ++seed) expect_backbone_of_cadical(support::random_state(standard_shape(), seed), to_text(static_cast<long long>(seed)));
}

TEST(Backbone, OfSmallStatesIsTheOneOfCadical) {
  for (const char* name : {"4x4", "6x6"}) {
    for (std::uint64_t seed = 0; seed < 200; ++seed) expect_backbone_of_cadical(support::random_state(*find_shape(name), seed), name);
  }
}

TEST(Backbone, OfAPositionWithVeryManySolutionsIsTheOneOfCadical) {
  expect_backbone_of_cadical(Position(standard_shape()), "empty grid");
  Position few = read("..............3.85..1.2..............................................4........9..");
  expect_backbone_of_cadical(few, "seven givens");
}

TEST(Backbone, OfAProperPuzzleIsItsSolution) {
  for (const auto& [name, puzzle, solution] : support::published_puzzles()) {
    const Position position = read(puzzle);
    const Backbone backbone = find_backbone(position);
    for (const Cell cell : position.shape().all_cells()) {
      const Digit digit = *digit_from(solution[cell.index], position.shape());
      EXPECT_EQ(backbone.possible[cell.index], DigitSet::of(digit)) << name;
      EXPECT_TRUE(backbone.is_always({cell, digit})) << name;
    }
  }
}

TEST(Backbone, OfAnImpossiblePositionIsEmpty) {
  Position position = read(published_puzzle("W-main"));
  position.eliminate({Cell(2), Digit(3)});  // r1c3 is 4 in the solution
  const Backbone backbone = find_backbone(position);
  EXPECT_FALSE(backbone.has_solution);
  EXPECT_TRUE(backbone.is_complete);
  for (const Cell cell : position.shape().all_cells()) EXPECT_TRUE(backbone.possible[cell.index].is_empty());
  EXPECT_FALSE(backbone.is_always({Cell(2), Digit(0)}));
}

TEST(Backbone, SaysSoWhenTheLimitIsReached) {
  const Position position = read(published_puzzle("PlatinumBlonde"));
  const Backbone cut = find_backbone(position, 20);
  EXPECT_FALSE(cut.is_complete);
  EXPECT_LE(cut.nodes, 20U);
  const Backbone full = find_backbone(position);
  bool some_unknown = false;
  for (const Cell cell : position.shape().all_cells()) {
    // What is said within the limit is true; the rest is named unknown.
    EXPECT_TRUE(cut.possible[cell.index].is_subset_of(full.possible[cell.index]));
    EXPECT_TRUE(cut.never[cell.index].is_subset_of(full.never[cell.index]));
    EXPECT_EQ(cut.possible[cell.index] | cut.never[cell.index] | cut.unknown[cell.index], position.candidates(cell));
    some_unknown = some_unknown || !cut.unknown[cell.index].is_empty();
  }
  EXPECT_TRUE(some_unknown);
}

TEST(Backbone, OfASixteenBySixteenPuzzleWithoutSomeGivensIsTheOneOfCadical) {
  const Position puzzle = read(support::data_rows("sixteen_instances.tsv").at(0).at(1));
  Position loose(puzzle.shape());
  int skipped = 0;
  for (const Cell cell : puzzle.givens()) {
    if (cell.index % 9 == 0 && ++skipped < 6) continue;
    loose.place_given(cell, *puzzle.digit_at(cell));
  }
  expect_backbone_of_cadical(loose, "16x16");
}

}  // namespace
}  // namespace cp
