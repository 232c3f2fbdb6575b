// SPDX-License-Identifier: Apache-2.0
// The three small words of a grid: cell, digit, candidate. They never turn into one another or into a number silently.
#pragma once

#include <compare>
#include <cstdint>

namespace cp {

inline constexpr int kMaxSide = 16;                     // the largest grid is 16x16
inline constexpr int kMaxCells = kMaxSide * kMaxSide;   // cells of the largest grid

// A cell by its index, row by row from 0.
struct Cell {
  std::uint8_t index = 0;

  constexpr Cell() = default;
  explicit constexpr Cell(int cell_index) : index(static_cast<std::uint8_t>(cell_index)) {}
  friend constexpr auto operator<=>(const Cell&, const Cell&) = default;
};

// A digit by its index from 0: the digit 1 has index 0. Written 1-9, then A-G for 10-16.
struct Digit {
  std::uint8_t index = 0;

  constexpr Digit() = default;
  explicit constexpr Digit(int digit_index) : index(static_cast<std::uint8_t>(digit_index)) {}
  [[nodiscard]] constexpr int number() const { return index + 1; }
  friend constexpr auto operator<=>(const Digit&, const Digit&) = default;
};

// "This cell holds this digit", as a possibility. Ordered by cell, then digit.
struct Candidate {
  Cell cell;
  Digit digit;

  friend constexpr auto operator<=>(const Candidate&, const Candidate&) = default;
};

}  // namespace cp
