// SPDX-License-Identifier: Apache-2.0
#include "exact/minimal.h"

#include <gtest/gtest.h>

#include "oracle/cadical_oracle.h"
#include "support/data_rows.h"
#include "support/random_states.h"

namespace cp {
namespace {

using support::published_puzzle;
using support::read;

TEST(Minimal, NeedsAProperPuzzle) {
  EXPECT_FALSE(is_minimal(Position(standard_shape())));
  EXPECT_TRUE(redundant_givens(Position(standard_shape())).is_empty());
  EXPECT_FALSE(is_minimal(read("11" + std::string(79, '.'))));
}

TEST(Minimal, LooksAtGivensOnly) {
  // Eliminations and placements of a solver do not make a given redundant.
  Position position = read(published_puzzle("Escargot"));
  const FullGrid solution = any_solution(position).value();
  for (const Cell cell : position.open()) position.place(cell, solution.at(cell));
  EXPECT_TRUE(is_minimal(position));
}

TEST(Minimal, RedundantGivensAreThoseCadicalCanDoWithout) {
  Rng rng(77);
  for (std::uint64_t seed = 0; seed < 25; ++seed) {
    const FullGrid solution = random_grid(standard_shape(), seed);
    CellSet givens = random_minimal_puzzle(solution, seed).givens();
    for (int i = 0; i < 4; ++i) givens.add(Cell(static_cast<int>(rng.below(81))));
    const Position puzzle = solution.with_givens(givens);
    const CellSet redundant = redundant_givens(puzzle);
    for (const Cell given : givens) {
      CellSet rest = givens;
      rest.remove(given);
      EXPECT_EQ(oracle::CadicalOracle(solution.with_givens(rest)).count(2) == 1, redundant.has(given)) << seed;
    }
    EXPECT_EQ(is_minimal(puzzle), redundant.is_empty());
  }
}

TEST(Minimal, SixteenClueSubsetsOfA372224HaveSeveralSolutions) {
  // OEIS A372224 prints this as a critical set: no clue can go.
  EXPECT_TRUE(is_minimal(read(published_puzzle("OEIS-A372224"))));
  EXPECT_EQ(read(published_puzzle("OEIS-A372224")).givens().size(), 17);
}

}  // namespace
}  // namespace cp
