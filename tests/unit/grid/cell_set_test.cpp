// SPDX-License-Identifier: Apache-2.0
#include "grid/cell_set.h"

#include <gtest/gtest.h>

#include <set>
#include <vector>

#include "base/rng.h"
#include "grid/digit_set.h"

namespace cp {
namespace {

std::set<int> plain(const CellSet& cells) {
  std::set<int> numbers;
  for (const Cell cell : cells) numbers.insert(cell.index);
  return numbers;
}

TEST(CellSet, BehavesLikeASetOfNumbersUnderRandomOperations) {
  Rng rng(1);
  for (int round = 0; round < 200; ++round) {
    CellSet a;
    CellSet b;
    std::set<int> plain_a;
    std::set<int> plain_b;
    for (int i = 0; i < 60; ++i) {
      const int cell = static_cast<int>(rng.below(kMaxCells));
      if (rng.below(3) == 0) {
        a.remove(Cell(cell));
        plain_a.erase(cell);
      } else if (rng.below(2) == 0) {
        a.add(Cell(cell));
        plain_a.insert(cell);
      } else {
        b.add(Cell(cell));
        plain_b.insert(cell);
      }
    }
    EXPECT_EQ(plain(a), plain_a);
    EXPECT_EQ(a.size(), static_cast<int>(plain_a.size()));
    EXPECT_EQ(a.is_empty(), plain_a.empty());
    std::set<int> both = plain_a;
    both.insert(plain_b.begin(), plain_b.end());
    EXPECT_EQ(plain(a | b), both);
    std::set<int> common;
    std::set<int> only_a;
    for (const int cell : plain_a) (plain_b.count(cell) == 1 ? common : only_a).insert(cell);
    EXPECT_EQ(plain(a & b), common);
    EXPECT_EQ(plain(a - b), only_a);
    EXPECT_EQ(a.meets(b), !common.empty());
    EXPECT_EQ(a.is_subset_of(b), only_a.empty());
    EXPECT_TRUE((a & b).is_subset_of(a));
    if (!a.is_empty()) {
      EXPECT_EQ(a.first().index, *plain_a.begin());
    }
  }
}

TEST(CellSet, GoesThroughItsCellsInOrderAcrossWordBorders) {
  CellSet cells;
  const std::vector<int> order = {0, 63, 64, 127, 128, 191, 192, 255};
  for (auto it = order.rbegin(); it != order.rend(); ++it) cells.add(Cell(*it));
  std::vector<int> seen;
  for (const Cell cell : cells) seen.push_back(cell.index);
  EXPECT_EQ(seen, order);
}

TEST(CellSet, WordsCanBeTakenOutAndPutBack) {
  CellSet cells;
  for (const int cell : {1, 70, 140, 210}) cells.add(Cell(cell));
  EXPECT_EQ(CellSet::from_words(cells.word(0), cells.word(1), cells.word(2), cells.word(3)), cells);
}

TEST(DigitSet, HoldsTheDigitsOfASide) {
  EXPECT_EQ(DigitSet::first(9).size(), 9);
  EXPECT_EQ(DigitSet::first(16).size(), 16);
  EXPECT_TRUE(DigitSet::first(16).has(Digit(15)));
  EXPECT_FALSE(DigitSet::first(9).has(Digit(9)));
}

TEST(DigitSet, AddsRemovesAndComparesLikeASet) {
  DigitSet digits;
  EXPECT_TRUE(digits.is_empty());
  digits.add(Digit(4));
  digits.add(Digit(2));
  EXPECT_EQ(digits.lowest(), Digit(2));
  EXPECT_EQ(digits, DigitSet::of(Digit(2)) | DigitSet::of(Digit(4)));
  EXPECT_EQ(digits - DigitSet::of(Digit(2)), DigitSet::of(Digit(4)));
  EXPECT_EQ(digits & DigitSet::of(Digit(2)), DigitSet::of(Digit(2)));
  EXPECT_TRUE(digits.is_subset_of(DigitSet::first(9)));
  EXPECT_FALSE(DigitSet::first(9).is_subset_of(digits));
  digits.remove(Digit(2));
  EXPECT_EQ(digits.size(), 1);
  std::vector<int> numbers;
  for (const Digit digit : DigitSet::first(3)) numbers.push_back(digit.number());
  EXPECT_EQ(numbers, (std::vector<int>{1, 2, 3}));
}

}  // namespace
}  // namespace cp
