// SPDX-License-Identifier: Apache-2.0
// The sides that people use: houses that do not overlap. In every band either some of its rows or some of its boxes
// (left sides), in every stack either some of its columns or some of its boxes (right sides). On a 9x9 grid that is
// 14 choices a band and 14^3 = 2 744 sides of each sort.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "grid/position.h"

namespace cp {

// Cells of a grid of at most 128 cells in two words.
struct TwoWords {
  std::uint64_t low = 0;
  std::uint64_t high = 0;

  friend constexpr TwoWords operator&(TwoWords a, TwoWords b) { return {a.low & b.low, a.high & b.high}; }
  friend constexpr TwoWords operator|(TwoWords a, TwoWords b) { return {a.low | b.low, a.high | b.high}; }
  friend constexpr TwoWords operator-(TwoWords a, TwoWords b) { return {a.low & ~b.low, a.high & ~b.high}; }
  friend constexpr bool operator==(TwoWords, TwoWords) = default;
  friend constexpr auto operator<=>(TwoWords, TwoWords) = default;
  [[nodiscard]] constexpr bool is_empty() const { return (low | high) == 0; }
  [[nodiscard]] constexpr int size() const { return std::popcount(low) + std::popcount(high); }
};

inline TwoWords two_words(const CellSet& cells) { return {cells.word(0), cells.word(1)}; }
inline CellSet cell_set(TwoWords words) { return CellSet::from_words(words.low, words.high); }

// 16 small numbers, one a digit; bytes so that a pair of sides is one subtraction.
typedef std::int8_t DigitBytes __attribute__((vector_size(16)));

struct Side {
  TwoWords open;           // its open cells
  DigitBytes known = {};   // per digit: copies placed in its houses, minus the number of houses
  std::uint32_t houses = 0;  // bit per house index
  std::uint32_t mirror = 0;  // the houses of the complementary side: the same bands filled up
};

// Sides that leave the same open cells and know the same digits weigh the same; one stands for all of them.
struct SideClass {
  TwoWords open;
  DigitBytes known = {};
  std::uint32_t houses = 0;  // of the member with the fewest houses
  std::uint32_t mirror = 0;  // of the complement with the fewest houses
  std::uint32_t first = 0;   // number of its first member among all sides
};

// Left sides (bands) or right sides (stacks) of the position, in a fixed order: band by band, rows before boxes.
// Precondition: the shape has at most 128 cells and 32 houses.
std::vector<Side> left_sides(const Position& position);
std::vector<Side> right_sides(const Position& position);

// The classes of these sides, in order of first meeting.
std::vector<SideClass> classes_of(const std::vector<Side>& sides);

}  // namespace cp
