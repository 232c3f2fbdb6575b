// SPDX-License-Identifier: Apache-2.0
// Every 4x4 puzzle there is. A puzzle with one solution is a grid and a set of its cells such that no other grid agrees
// with it there; so all of them are found by looking at the 288 grids through each of the 65 536 sets of cells.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <bit>
#include <vector>

#include "exact/minimal.h"
#include "exact/solve.h"

namespace cp {
namespace {

constexpr std::size_t kCellSets = 1U << 16;

struct Census {
  std::array<std::uint64_t, 17> unique_by_clues{};
  std::array<std::uint64_t, 17> minimal_by_clues{};
  std::vector<FullGrid> grids;
  // Which grids (bits) each set of cells singles out.
  std::vector<std::array<std::uint64_t, 5>> singled_out;
};

// Two bits a cell.
std::uint32_t packed(const FullGrid& grid) {
  std::uint32_t word = 0;
  for (const Cell cell : grid.shape().all_cells()) word |= static_cast<std::uint32_t>(grid.at(cell).index) << (2U * cell.index);
  return word;
}

std::uint32_t widened(std::size_t cells) {
  std::uint32_t mask = 0;
  for (unsigned i = 0; i < 16; ++i) {
    if (((cells >> i) & 1U) != 0) mask |= 3U << (2U * i);
  }
  return mask;
}

std::array<std::uint64_t, 5> grids_singled_out(const std::vector<std::uint32_t>& words, std::size_t cells) {
  std::vector<std::pair<std::uint32_t, std::size_t>> views;
  for (std::size_t i = 0; i < words.size(); ++i) views.emplace_back(words[i] & widened(cells), i);
  std::sort(views.begin(), views.end());
  std::array<std::uint64_t, 5> alone{};
  for (std::size_t i = 0; i < views.size(); ++i) {
    const bool like_previous = i > 0 && views[i - 1].first == views[i].first;
    const bool like_next = i + 1 < views.size() && views[i + 1].first == views[i].first;
    if (!like_previous && !like_next) alone[views[i].second / 64] |= std::uint64_t{1} << (views[i].second % 64);
  }
  return alone;
}

const Census& census() {
  static const Census kCensus = [] {
    Census result;
    result.grids = solutions(Position(*find_shape("4x4")), 1000).grids;
    std::vector<std::uint32_t> words;
    for (const FullGrid& grid : result.grids) words.push_back(packed(grid));
    for (std::size_t cells = 0; cells < kCellSets; ++cells) result.singled_out.push_back(grids_singled_out(words, cells));
    for (std::size_t cells = 0; cells < kCellSets; ++cells) {
      const auto clues = static_cast<std::size_t>(std::popcount(cells));
      for (std::size_t word = 0; word < 5; ++word) {
        const std::uint64_t unique = result.singled_out[cells][word];
        std::uint64_t still_unique = 0;
        for (unsigned i = 0; i < 16; ++i) {
          if (((cells >> i) & 1U) != 0) still_unique |= result.singled_out[cells & ~(std::size_t{1} << i)][word];
        }
        result.unique_by_clues[clues] += static_cast<std::uint64_t>(std::popcount(unique));
        result.minimal_by_clues[clues] += static_cast<std::uint64_t>(std::popcount(unique & ~still_unique));
      }
    }
    return result;
  }();
  return kCensus;
}

Position puzzle_of(const FullGrid& grid, std::size_t cells) {
  return grid.with_givens(CellSet::from_words(static_cast<std::uint64_t>(cells), 0));
}

TEST(FourByFour, HasTheNumbersOfProperPuzzlesPrintedInA109252) {
  // OEIS A109252 (H. van der Sanden 2005): uniquely solvable 4x4 puzzles with 0 .. 16 clues.
  const std::array<std::uint64_t, 17> printed = {0,         0,         0,         0,         25'728,  284'160, 1'041'408, 2'141'184, 2'961'024,
                                                 2'958'336, 2'204'928, 1'239'552, 522'624,   161'280, 34'560,  4'608,     288};
  EXPECT_EQ(census().unique_by_clues, printed);
}

TEST(FourByFour, Has13579680ProperPuzzlesInAll) {
  // S. Gupta (TIFR), mathematics pages.
  std::uint64_t total = 0;
  for (const std::uint64_t count : census().unique_by_clues) total += count;
  EXPECT_EQ(total, 13'579'680U);
}

TEST(FourByFour, Has85632MinimalPuzzlesNoneWithMoreThanSixClues) {
  // S. Gupta (TIFR): 25 728 with 4 clues, 58 368 with 5, 1 536 with 6.
  std::array<std::uint64_t, 17> printed{};
  printed[4] = 25'728;
  printed[5] = 58'368;
  printed[6] = 1'536;
  EXPECT_EQ(census().minimal_by_clues, printed);
}

TEST(FourByFour, SearchAgreesWithTheCensusOnEveryFourClueViewOfEveryGrid) {
  // 1 820 sets of four cells, 288 grids: is_proper against "singled out".
  std::uint64_t proper = 0;
  for (std::size_t cells = 0; cells < kCellSets; ++cells) {
    if (std::popcount(cells) != 4) continue;
    for (std::size_t i = 0; i < census().grids.size(); i += 12) {  // every twelfth grid: 43 680 puzzles
      const bool expected = ((census().singled_out[cells][i / 64] >> (i % 64)) & 1U) != 0;
      ASSERT_EQ(is_proper(puzzle_of(census().grids[i], cells)), expected) << cells << " " << i;
      proper += expected ? 1 : 0;
    }
  }
  EXPECT_GT(proper, 1000U);
}

TEST(FourByFour, IsMinimalAgreesWithTheCensusOnEverySetOfCellsOfTheFirstGrid) {
  const FullGrid& grid = census().grids.front();
  std::uint64_t minimal = 0;
  for (std::size_t cells = 0; cells < kCellSets; ++cells) {
    if (std::popcount(cells) > 8) continue;
    bool expected = (census().singled_out[cells][0] & 1U) != 0;
    for (unsigned i = 0; i < 16 && expected; ++i) {
      if (((cells >> i) & 1U) != 0 && (census().singled_out[cells & ~(std::size_t{1} << i)][0] & 1U) != 0) expected = false;
    }
    ASSERT_EQ(is_minimal(puzzle_of(grid, cells)), expected) << cells;
    minimal += expected ? 1 : 0;
  }
  EXPECT_GT(minimal, 100U);
}

}  // namespace
}  // namespace cp
