// SPDX-License-Identifier: Apache-2.0
// Two small tables of yes and no that locked sets and fish are read from: a house (cells against digits) and a digit
// (rows against columns). Both are kept by row and by column of the table, as 16-bit masks.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "grid/position.h"

namespace cp::deduce {

using Mask = std::uint16_t;

// The houses in the order in which techniques look at them: boxes, rows, columns.
std::vector<House> houses_in_order(const Shape& shape);

// The open cells of a house and their candidates. Digits already placed in the house have an empty mask.
struct HouseTable {
  HouseTable(const Position& position, House house);

  std::array<Cell, kMaxSide> cells{};       // open cells by index
  int cell_count = 0;
  std::array<Mask, kMaxSide> digits_of{};   // per open cell: its candidates, bit = digit index
  std::array<Mask, kMaxSide> cells_of{};    // per digit index: open cells that can hold it, bit = index in `cells`
};

// Where one digit can still go, by row and by column.
struct DigitTable {
  DigitTable(const Position& position, Digit digit);

  std::array<Mask, kMaxSide> columns_of{};  // per row: columns
  std::array<Mask, kMaxSide> rows_of{};     // per column: rows
};

}  // namespace cp::deduce
