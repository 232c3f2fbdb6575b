// SPDX-License-Identifier: Apache-2.0
// Verdicts on grids that are not 9x9, against CaDiCaL and against statements that the rules settle; and what an answer must not show.
#include <gtest/gtest.h>

#include "claim/verdict.h"
#include "support/claim_states.h"
#include "support/data_rows.h"
#include "verify/certificate_check.h"

namespace cp {
namespace {

Ground all_rules(const Shape& shape) { return {true, Footing::all_rules(shape).houses, {}, {}}; }

// A full grid without some of its digits.
Position with_holes(const FullGrid& grid, int holes, std::uint64_t seed) {
  Rng rng(seed);
  CellSet givens = grid.shape().all_cells();
  for (int i = 0; i < holes; ++i) givens.remove(Cell(static_cast<int>(rng.below(static_cast<std::uint32_t>(grid.shape().cell_count())))));
  return grid.with_givens(givens);
}

Verdict wanted(const Board& board, oracle::ClaimOracle& oracle, const oracle::Saying& saying) {
  if (board.truth && !oracle::is_so(saying, support::digits_of(*board.truth))) return Verdict::kRefuted;
  if (!oracle.can_be(saying, false)) return Verdict::kProved;
  return !board.truth && !oracle.can_be(saying, true) ? Verdict::kRefuted : Verdict::kOpen;
}

void compare_with_cadical(const Shape& shape, int holes, int claims, std::uint64_t seed) {
  const FullGrid grid = random_grid(shape, seed);
  const Position position = with_holes(grid, holes, seed + 1);
  const auto board = judge_board(position);
  ASSERT_TRUE(board.is_ok());
  const Ground ground = all_rules(shape);
  oracle::Rules rules;
  for (const House house : ground.houses) rules.houses.push_back(house.index);
  oracle::ClaimOracle oracle(board->position, rules);
  support::RandomSayings sayings(shape, support::digits_of(grid), seed);
  for (int i = 0; i < claims; ++i) {
    const oracle::Saying saying = sayings.make(1);
    const std::string text = oracle::text_of(saying, shape.side());
    const auto claim = parse_claim(position, {}, text);
    ASSERT_TRUE(claim.is_ok()) << text;
    const auto answer = judge_claim(*board, *claim, ground);
    ASSERT_TRUE(answer.is_ok()) << text;
    EXPECT_EQ(answer->verdict, wanted(*board, oracle, saying)) << text;
    if (answer->certificate) {
      EXPECT_TRUE(check_certificate(shape, *answer->certificate).holds) << text;
    }
  }
}

TEST(VerdictShapes, SixBySixAgreesWithCadical) {
  for (const std::uint64_t seed : {1U, 2U, 3U}) compare_with_cadical(*find_shape("6x6"), 24, 12, seed);
}

TEST(VerdictShapes, SixteenBySixteenAgreesWithCadical) { compare_with_cadical(*find_shape("16x16"), 110, 12, 5); }

TEST(VerdictShapes, WhatTheRulesSettleOnLargeGrids) {
  const Shape& shape = *find_shape("16x16");
  const Position empty(shape);
  const Board board{empty, {}, std::nullopt};
  const auto verdict = [&](const std::string& text, const Ground& ground) {
    const auto claim = parse_claim(empty, {}, text);
    EXPECT_TRUE(claim.is_ok()) << text;
    const auto answer = judge_claim(board, *claim, ground);
    EXPECT_TRUE(answer.is_ok()) << text;
    return answer->verdict;
  };
  const Ground row{true, {shape.row(0)}, {}, {}};
  EXPECT_EQ(verdict("if r1c1 = g then r1c16 != g", row), Verdict::kProved);
  EXPECT_EQ(verdict("exactly one 16 in r1", row), Verdict::kProved);
  EXPECT_EQ(verdict("exactly one a in r2", row), Verdict::kOpen);
  EXPECT_EQ(verdict("r1c1 = 12 and r1c2 = 12", row), Verdict::kRefuted);
  EXPECT_EQ(verdict("{r1 r2} = {c1} + 1..16", {true, {shape.row(0), shape.row(1), shape.column(0)}, {}, {}}), Verdict::kProved);
}

// On hard 9x9 puzzles: what is shown against a false claim is not the solution, and speaks about no other cell.
TEST(VerdictShapes, NothingOfTheSolutionIsShownAgainstAClaim) {
  int shown = 0;
  for (const char* name : {"Escargot", "gecode0", "W-main"}) {
    const auto board = judge_board(support::read(support::published_puzzle(name)));
    ASSERT_TRUE(board.is_ok());
    ASSERT_TRUE(board->truth);
    const Ground ground = all_rules(board->position.shape());
    support::RandomSayings sayings(board->position.shape(), support::digits_of(*board->truth), 11);
    for (int i = 0; i < 25; ++i) {
      const auto claim = parse_claim(board->position, {}, oracle::text_of(sayings.make(), 9));
      ASSERT_TRUE(claim.is_ok());
      const auto answer = judge_claim(*board, *claim, ground);
      ASSERT_TRUE(answer.is_ok());
      for (const Candidate& each : answer->counter) EXPECT_TRUE(mentioned(*claim).has(each.cell));
      if (answer->verdict != Verdict::kRefuted || answer->counter.empty()) continue;
      ++shown;
      EXPECT_TRUE(std::any_of(answer->counter.begin(), answer->counter.end(), [&](const Candidate& each) { return !board->truth->has(each); }));
    }
  }
  // With all rules and one solution nothing but the solution fits, so there is hardly ever anything to show.
  EXPECT_EQ(shown, 0);
}

// The same with less than all rules, where there is something to show.
TEST(VerdictShapes, CountersOnHardPuzzlesAreNotTheSolution) {
  int shown = 0;
  for (const char* name : {"Escargot", "gecode0"}) {
    const auto board = judge_board(support::read(support::published_puzzle(name)));
    ASSERT_TRUE(board.is_ok());
    Ground ground = all_rules(board->position.shape());
    ground.houses.resize(9);
    support::RandomSayings sayings(board->position.shape(), support::digits_of(*board->truth), 12);
    for (int i = 0; i < 40; ++i) {
      const auto claim = parse_claim(board->position, {}, oracle::text_of(sayings.make(), 9));
      ASSERT_TRUE(claim.is_ok());
      const auto answer = judge_claim(*board, *claim, ground);
      ASSERT_TRUE(answer.is_ok());
      if (answer->verdict != Verdict::kRefuted || answer->counter.empty()) continue;
      ++shown;
      EXPECT_TRUE(std::any_of(answer->counter.begin(), answer->counter.end(), [&](const Candidate& each) { return !board->truth->has(each); }));
      EXPECT_EQ(answer->counter.size(), static_cast<std::size_t>(mentioned(*claim).size()));
    }
  }
  EXPECT_GT(shown, 10);
}

}  // namespace
}  // namespace cp
