// SPDX-License-Identifier: Apache-2.0
// 9x9: the orders of lines under which the givens of a puzzle stand as early as possible.
//
// Rows are chosen one after the other, from both ways to hold the board. Columns are not chosen: what is kept is which of
// them could not be told apart so far. A further row puts them in order where its givens differ, so the best a row can do
// is known at once, and only choices of rows that do as well as the best go on. Usually one or two are left at the end.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

namespace cp::detail {

// The board held one way: the digits (0: empty) and, for each row, its givens as three groups of three bits, the first
// column highest.
struct HeldBoard {
  std::array<std::array<std::uint8_t, 9>, 9> digits{};
  std::array<std::uint16_t, 9> givens{};
};
// As it is, and turned over its diagonal.
using BothWays = std::array<HeldBoard, 2>;
BothWays both_ways(const std::uint8_t* digits);

// An order of rows with what is known of the columns. Ties are two bits: bit i says that the things at places i and i+1
// can not be told apart.
struct LineOrder {
  std::uint8_t turned;
  std::array<std::uint8_t, 9> rows;        // sources, from top to bottom
  std::uint16_t used;                      // the same as a set
  std::array<std::uint8_t, 3> stacks;      // sources, from left to right
  std::array<std::uint8_t, 3> inside;      // for the stack at each place, the order of its columns, as a number of kOrders
  std::array<std::uint8_t, 3> columns_tied;
  std::uint8_t stacks_tied;
};

struct LeastPattern {
  std::array<std::uint16_t, 9> rows{};  // the givens of each row, as in HeldBoard
  std::vector<LineOrder> orders;        // all that lead there, but equal ones for rows without givens
};
LeastPattern least_pattern(const BothWays& board);

// The six orders of three things; identity first.
inline constexpr std::array<std::array<std::uint8_t, 3>, 6> kOrders{{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}}};
// The number of the order that first puts things in order `first` and then takes those in order `next`.
inline constexpr std::array<std::array<std::uint8_t, 6>, 6> kOrderOfOrder = [] {
  std::array<std::array<std::uint8_t, 6>, 6> table{};
  for (std::size_t first = 0; first < 6; ++first) {
    for (std::size_t next = 0; next < 6; ++next) {
      for (std::uint8_t which = 0; which < 6; ++which) {
        bool is_it = true;
        for (std::size_t i = 0; i < 3; ++i) is_it = is_it && kOrders[which][i] == kOrders[first][kOrders[next][i]];
        if (is_it) table[first][next] = which;
      }
    }
  }
  return table;
}();

}  // namespace cp::detail
