// SPDX-License-Identifier: Apache-2.0
// Four opinions on the same random candidate states: the 9x9 engine, the engine for every shape, the plain search, CaDiCaL.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "exact/detail/search.h"
#include "oracle/cadical_oracle.h"
#include "oracle/plain_search.h"
#include "support/data_rows.h"
#include "support/random_states.h"

namespace cp {
namespace {

constexpr std::uint64_t kCountLimit = 40;

using Engine = SolutionCount (*)(const Position&, detail::SearchLimits, std::vector<FullGrid>*);

std::vector<FullGrid> sorted_solutions(Engine engine, const Position& position, std::uint64_t limit) {
  std::vector<FullGrid> grids;
  const SolutionCount found = engine(position, {limit, kNoLimit}, &grids);
  EXPECT_EQ(found.count, grids.size());
  EXPECT_GE(found.nodes, 1U);
  std::sort(grids.begin(), grids.end());
  return grids;
}

std::vector<FullGrid> sorted_plain_solutions(const Position& position, std::size_t limit) {
  std::vector<FullGrid> grids;
  for (const auto& digits : oracle::plain_solutions(position, limit)) {
    FullGrid grid(position.shape());
    for (const Cell cell : position.shape().all_cells()) grid.set(cell, digits[cell.index]);
    grids.push_back(grid);
  }
  std::sort(grids.begin(), grids.end());
  return grids;
}

// Same number; and when that is all there are, the same grids.
void expect_same(const Position& position, const std::vector<FullGrid>& ours, const std::vector<FullGrid>& theirs, std::uint64_t seed) {
  ASSERT_EQ(ours.size(), theirs.size()) << position.shape().name() << " seed " << seed << "\n" << to_candidate_text(position);
  if (ours.size() < kCountLimit) {
    ASSERT_EQ(ours, theirs) << seed;
  }
  for (const FullGrid& grid : ours) ASSERT_TRUE(grid.is_valid() && grid.fits(position)) << seed;
}

// Compares seeds first .. last-1 and returns how many states had no, one, several solutions.
std::map<int, int> compare_engines(const Shape& shape, std::uint64_t first, std::uint64_t last) {
  std::map<int, int> kinds;
  for (std::uint64_t seed = first; seed < last && !testing::Test::HasFatalFailure(); ++seed) {
    const Position position = support::random_state(shape, seed);
    const auto general = sorted_solutions(detail::search_any_shape, position, kCountLimit);
    expect_same(position, general, sorted_plain_solutions(position, kCountLimit), seed);
    if (shape.box_rows() == 3 && shape.box_columns() == 3) {
      expect_same(position, sorted_solutions(detail::search_nine, position, kCountLimit), general, seed);
    }
    EXPECT_EQ(oracle::CadicalOracle(position).count(kCountLimit), general.size()) << seed;
    ++kinds[static_cast<int>(std::min<std::size_t>(general.size(), 2))];
  }
  return kinds;
}

void expect_all_kinds(std::map<int, int> kinds, int at_least) {
  EXPECT_GE(kinds[0], at_least);
  EXPECT_GE(kinds[1], at_least);
  EXPECT_GE(kinds[2], at_least);
}

TEST(Engines, AgreeOnRandomNineByNineStatesFirstThousand) { expect_all_kinds(compare_engines(standard_shape(), 0, 1000), 100); }
TEST(Engines, AgreeOnRandomNineByNineStatesSecondThousand) { expect_all_kinds(compare_engines(standard_shape(), 1000, 2000), 100); }
TEST(Engines, AgreeOnRandomNineByNineStatesThirdThousand) { expect_all_kinds(compare_engines(standard_shape(), 2000, 3000), 100); }
TEST(Engines, AgreeOnRandomFourByFourStates) { expect_all_kinds(compare_engines(*find_shape("4x4"), 0, 600), 30); }
TEST(Engines, AgreeOnRandomSixBySixStates) { expect_all_kinds(compare_engines(*find_shape("6x6"), 0, 600), 30); }

TEST(Engines, AgreeOnHowManySolutionsManyStatesHave) {
  // Two engines only, so that many states and large counts are affordable.
  for (std::uint64_t seed = 5000; seed < 9000; ++seed) {
    const Position position = support::random_state(standard_shape(), seed);
    const detail::SearchLimits limits{3000, kNoLimit};
    ASSERT_EQ(detail::search_nine(position, limits, nullptr).count, detail::search_any_shape(position, limits, nullptr).count) << seed;
  }
}

TEST(Engines, TreatACellWithOneCandidateKeptLikeAPlacedDigit) {
  for (std::uint64_t seed = 0; seed < 200; ++seed) {
    const FullGrid solution = random_grid(standard_shape(), seed);
    const Position puzzle = random_minimal_puzzle(solution, seed);
    Position kept(standard_shape());
    for (const Cell cell : puzzle.givens()) keep_only(kept, {cell, solution.at(cell)});
    EXPECT_TRUE(kept.placed().is_empty());
    EXPECT_EQ(any_solution(kept), solution);
    EXPECT_EQ(count_solutions(kept, 2).nodes, count_solutions(puzzle, 2).nodes);
  }
}

TEST(Engines, FindNothingWhereTwoGivensClash) {
  Position position = support::read("11......." + std::string(72, '.'));
  EXPECT_EQ(detail::search_nine(position, {}, nullptr).count, 0U);
  EXPECT_EQ(detail::search_any_shape(position, {}, nullptr).count, 0U);
}

TEST(Engines, FindTheOneGridOfACompletePosition) {
  const FullGrid grid = random_grid(standard_shape(), 1);
  for (const Engine engine : {&detail::search_nine, &detail::search_any_shape}) {
    EXPECT_EQ(sorted_solutions(engine, grid.to_position(), 5), std::vector<FullGrid>{grid});
  }
}

TEST(Engines, FindNothingInACompletePositionThatIsWrong) {
  FullGrid grid = random_grid(standard_shape(), 1);
  const Digit first = grid.at(Cell(0));
  grid.set(Cell(0), grid.at(Cell(1)));
  grid.set(Cell(1), first);
  EXPECT_EQ(detail::search_nine(grid.to_position(), {}, nullptr).count, 0U);
  EXPECT_EQ(detail::search_any_shape(grid.to_position(), {}, nullptr).count, 0U);
}

}  // namespace
}  // namespace cp
