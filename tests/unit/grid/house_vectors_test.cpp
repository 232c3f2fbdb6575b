// SPDX-License-Identifier: Apache-2.0
// Facts about the houses as 0/1 vectors over the cells: their rank, their dependencies, and how many pairs of house groups
// there are. These are what balances are made of.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <set>
#include <vector>

#include "grid/shape.h"

namespace cp {
namespace {

using Vector = std::vector<std::uint64_t>;

std::uint64_t power(std::uint64_t base, std::uint64_t exponent, std::uint64_t prime) {
  std::uint64_t result = 1;
  for (; exponent > 0; exponent >>= 1U) {
    if ((exponent & 1U) != 0) result = result * base % prime;
    base = base * base % prime;
  }
  return result;
}

// Rank of the rows modulo a prime below 2^31, by elimination. A rank modulo a prime is never above the rank over the
// rationals, and equal to it for all but finitely many primes; two large ones in agreement with the formula settle it.
int rank_modulo(std::vector<Vector> rows, std::uint64_t prime) {
  std::size_t rank = 0;
  for (std::size_t column = 0; column < rows.front().size() && rank < rows.size(); ++column) {
    const auto pivot = std::find_if(rows.begin() + static_cast<std::ptrdiff_t>(rank), rows.end(), [&](const Vector& row) { return row[column] != 0; });
    if (pivot == rows.end()) continue;
    std::iter_swap(pivot, rows.begin() + static_cast<std::ptrdiff_t>(rank));
    const std::uint64_t inverse = power(rows[rank][column], prime - 2, prime);
    for (std::size_t other = rank + 1; other < rows.size(); ++other) {
      const std::uint64_t factor = rows[other][column] * inverse % prime;
      for (std::size_t i = column; factor != 0 && i < rows[other].size(); ++i) {
        rows[other][i] = (rows[other][i] + (prime - factor) * rows[rank][i]) % prime;
      }
    }
    ++rank;
  }
  return static_cast<int>(rank);
}

std::vector<Vector> house_vectors(const Shape& shape) {
  std::vector<Vector> vectors;
  for (int house = 0; house < shape.house_count(); ++house) {
    Vector vector(static_cast<std::size_t>(shape.cell_count()));
    for (const Cell cell : shape.cells(House(house))) vector[cell.index] = 1;
    vectors.push_back(vector);
  }
  return vectors;
}

void expect_rank(const Shape& shape, int expected) {
  for (const std::uint64_t prime : {2'147'483'647ULL, 2'147'483'629ULL}) {  // the two largest primes below 2^31
    EXPECT_EQ(rank_modulo(house_vectors(shape), prime), expected) << shape.name() << " modulo " << prime;
  }
}

TEST(HouseVectors, HaveThePublishedRank) {
  // R. Poeppel, "Linear equations for solving partial Latin squares and Sudokus", arXiv:2509.10472: for n x n with boxes of
  // m x l cells 2n - 1 + (l - 1)(m - 1).
  for (const Shape* shape : all_shapes()) expect_rank(*shape, 2 * shape->side() - 1 + (shape->band_count() - 1) * (shape->stack_count() - 1));
  expect_rank(*find_shape("4x4"), 8);     // of 12
  expect_rank(*find_shape("6x6"), 13);    // of 18
  expect_rank(*find_shape("9x9"), 21);    // of 27
  expect_rank(*find_shape("16x16"), 40);  // of 48
}

TEST(HouseVectors, OfShapesNotOfferedHaveThePublishedRankToo) {
  expect_rank(Shape("8x8", 2, 4), 18);
  expect_rank(Shape("10x10", 2, 5), 23);
  expect_rank(Shape("12x12", 3, 4), 29);
}

// Rows, columns and boxes of a 9x9 grid with weights, as cell weights.
using Weights = std::array<std::int8_t, 81>;

Weights weigh(const std::vector<int>& left, const std::vector<int>& right) {
  Weights weights{};
  for (const int house : left) {
    for (const Cell cell : standard_shape().cells(House(house))) ++weights[cell.index];
  }
  for (const int house : right) {
    for (const Cell cell : standard_shape().cells(House(house))) --weights[cell.index];
  }
  return weights;
}

TEST(HouseVectors, OfBandsAndStacksDependOnOneAnother) {
  // Three rows of a band are its three boxes, three columns of a stack likewise: the six dependencies.
  for (int i = 0; i < 3; ++i) {
    EXPECT_EQ(weigh({3 * i, 3 * i + 1, 3 * i + 2}, {18 + 3 * i, 19 + 3 * i, 20 + 3 * i}), Weights{});
    EXPECT_EQ(weigh({9 + 3 * i, 10 + 3 * i, 11 + 3 * i}, {18 + i, 21 + i, 24 + i}), Weights{});
  }
}

// What a pair leaves over, up to sign: a weight of -3..3 in three bits a cell.
using Packed = std::array<std::uint64_t, 4>;

Packed packed_up_to_sign(const Weights& weights) {
  int sign = 0;
  Packed packed{};
  for (std::size_t cell = 0; cell < 81; ++cell) {
    if (sign == 0 && weights[cell] != 0) sign = weights[cell] > 0 ? 1 : -1;
    packed[cell / 21] |= static_cast<std::uint64_t>(weights[cell] * sign + 3) << (3 * (cell % 21));
  }
  return packed;
}

struct PairTable {
  std::uint64_t pairs = 0;
  std::uint64_t nothing_left = 0;
  std::vector<Packed> leftovers;

  std::uint64_t different() {
    std::sort(leftovers.begin(), leftovers.end());
    return static_cast<std::uint64_t>(std::unique(leftovers.begin(), leftovers.end()) - leftovers.begin());
  }
};

// All groups of `size` houses, as increasing numbers.
std::vector<std::vector<int>> groups(int size) {
  std::vector<std::vector<int>> all = {{}};
  for (int i = 0; i < size; ++i) {
    std::vector<std::vector<int>> longer;
    for (const auto& group : all) {
      for (int house = group.empty() ? 0 : group.back() + 1; house < 27; ++house) {
        longer.push_back(group);
        longer.back().push_back(house);
      }
    }
    all = longer;
  }
  return all;
}

// Unordered pairs of disjoint groups of the same size.
PairTable tabulate(int size) {
  PairTable table;
  const auto all = groups(size);
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t j = i + 1; j < all.size(); ++j) {
      const auto shared = std::find_first_of(all[i].begin(), all[i].end(), all[j].begin(), all[j].end());
      if (shared != all[i].end()) continue;
      const Weights weights = weigh(all[i], all[j]);
      ++table.pairs;
      table.nothing_left += weights == Weights{} ? 1 : 0;
      table.leftovers.push_back(packed_up_to_sign(weights));
    }
  }
  return table;
}

// The table was counted apart from this program; no source in print is known for the numbers of different leftovers. "Nothing
// left over" counts as one of them.
TEST(HousePairs, OfOneHouseAgainstOneAre351AllDifferent) {
  PairTable table = tabulate(1);
  EXPECT_EQ(table.pairs, 351U);
  EXPECT_EQ(table.nothing_left, 0U);
  EXPECT_EQ(table.different(), 351U);
}

TEST(HousePairs, OfTwoHousesAgainstTwoAre52650With51516DifferentLeftovers) {
  PairTable table = tabulate(2);
  EXPECT_EQ(table.pairs, 52'650U);
  EXPECT_EQ(table.nothing_left, 0U);
  EXPECT_EQ(table.different(), 51'516U);
}

TEST(HousePairs, OfThreeHousesAgainstThreeAre2960100With2732215DifferentLeftovers) {
  PairTable table = tabulate(3);
  EXPECT_EQ(table.pairs, 2'960'100U);
  EXPECT_EQ(table.nothing_left, 6U);  // the six dependencies
  EXPECT_EQ(table.different(), 2'732'215U);
}

}  // namespace
}  // namespace cp
