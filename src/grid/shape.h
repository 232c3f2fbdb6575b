// SPDX-License-Identifier: Apache-2.0
// What is the board? A shape is a side length, a size of box, and the houses that follow from them.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "grid/cell.h"
#include "grid/cell_set.h"
#include "grid/digit_set.h"

namespace cp {

enum class HouseKind : std::uint8_t { kRow, kColumn, kBox };

// A house by its index: the rows 0 .. side-1, then the columns, then the boxes in reading order.
struct House {
  std::uint8_t index = 0;

  constexpr House() = default;
  explicit constexpr House(int house_index) : index(static_cast<std::uint8_t>(house_index)) {}
  friend constexpr auto operator<=>(const House&, const House&) = default;
};

// Immutable; made once at start-up, shared by reference for the life of the program.
class Shape {
 public:
  Shape(std::string_view name, int box_rows, int box_columns);

  [[nodiscard]] std::string_view name() const { return name_; }
  // Cells in a house = number of digits = rows = columns = boxes.
  [[nodiscard]] int side() const { return side_; }
  [[nodiscard]] int box_rows() const { return box_rows_; }
  [[nodiscard]] int box_columns() const { return box_columns_; }
  [[nodiscard]] int cell_count() const { return side_ * side_; }
  [[nodiscard]] int house_count() const { return 3 * side_; }
  // Bands (rows of boxes) and stacks (columns of boxes).
  [[nodiscard]] int band_count() const { return side_ / box_rows_; }
  [[nodiscard]] int stack_count() const { return side_ / box_columns_; }
  [[nodiscard]] DigitSet digits() const { return DigitSet::first(side_); }
  [[nodiscard]] const CellSet& all_cells() const { return all_cells_; }

  [[nodiscard]] int row_of(Cell cell) const { return cell.index / side_; }
  [[nodiscard]] int column_of(Cell cell) const { return cell.index % side_; }
  [[nodiscard]] int box_of(Cell cell) const { return box_of_[cell.index]; }
  [[nodiscard]] Cell cell_at(int row, int column) const { return Cell(row * side_ + column); }

  [[nodiscard]] House row(int number) const { return House(number); }
  [[nodiscard]] House column(int number) const { return House(side_ + number); }
  [[nodiscard]] House box(int number) const { return House(2 * side_ + number); }
  [[nodiscard]] HouseKind kind(House house) const { return static_cast<HouseKind>(house.index / side_); }
  // Which row, column or box it is, from 0.
  [[nodiscard]] int number(House house) const { return house.index % side_; }
  [[nodiscard]] const CellSet& cells(House house) const { return house_cells_[house.index]; }
  // The row, the column and the box of a cell, in that order.
  [[nodiscard]] std::array<House, 3> houses_of(Cell cell) const {
    return {row(row_of(cell)), column(column_of(cell)), box(box_of(cell))};
  }
  // The cells that share a house with this one, without itself.
  [[nodiscard]] const CellSet& peers(Cell cell) const { return peers_[cell.index]; }
  // Cells that see every cell of the set (none of the set itself unless it sees all others and itself is left out).
  [[nodiscard]] CellSet common_peers(const CellSet& cells) const;

  // Names as people write them: "r3c7", "r3", "b5"; digits as one character (1-9, A-G).
  [[nodiscard]] std::string name_of(Cell cell) const;
  [[nodiscard]] std::string name_of(House house) const;
  [[nodiscard]] static char name_of(Digit digit);
  // "row 3", "column 7", "box 5".
  [[nodiscard]] std::string long_name_of(House house) const;
  // Reads such names; upper case is accepted. The span of an error counts inside the given text.
  [[nodiscard]] Result<Cell> parse_cell(std::string_view text) const;
  [[nodiscard]] Result<House> parse_house(std::string_view text) const;

 private:
  std::string_view name_;
  int side_;
  int box_rows_;
  int box_columns_;
  CellSet all_cells_;
  std::vector<CellSet> house_cells_;
  std::vector<CellSet> peers_;
  std::vector<std::uint8_t> box_of_;
};

// The shapes of shapes.def, smallest first.
const std::vector<const Shape*>& all_shapes();
// Null when there is no shape of that name / with that many cells.
const Shape* find_shape(std::string_view name);
const Shape* find_shape_with_cells(int cell_count);
// The usual 9x9 grid.
const Shape& standard_shape();

}  // namespace cp
