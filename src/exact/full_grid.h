// SPDX-License-Identifier: Apache-2.0
// A grid with a digit in every cell. A plain value; it may be wrong (is_valid() tells), it is never half empty.
#pragma once

#include <array>
#include <compare>
#include <optional>
#include <string>

#include "grid/position.h"

namespace cp {

class FullGrid {
 public:
  // Every cell holds the digit 1, which is no valid grid yet.
  explicit FullGrid(const Shape& shape) : shape_(&shape) {}
  // The digits of a complete position; empty while a cell is open.
  static std::optional<FullGrid> from(const Position& position);
  // Reads side*side digits without blanks, as to_line() writes them; empty when it is not that.
  static std::optional<FullGrid> from_line(std::string_view line);

  [[nodiscard]] const Shape& shape() const { return *shape_; }
  [[nodiscard]] Digit at(Cell cell) const { return Digit(digits_[cell.index]); }
  void set(Cell cell, Digit digit) { digits_[cell.index] = digit.index; }
  [[nodiscard]] bool has(Candidate candidate) const { return at(candidate.cell) == candidate.digit; }

  // Does every house hold every digit once?
  [[nodiscard]] bool is_valid() const;
  // Does it agree with the position: every cell's digit is a candidate there (or placed there)?
  [[nodiscard]] bool fits(const Position& position) const;

  // The position in which the cells named are givens and everything else is open.
  [[nodiscard]] Position with_givens(const CellSet& givens) const;
  // The complete position; every cell a given.
  [[nodiscard]] Position to_position() const { return with_givens(shape_->all_cells()); }
  // One character a cell, row by row.
  [[nodiscard]] std::string to_line() const;

  // Grids of one shape are ordered as their lines are, cell by cell in reading order.
  friend bool operator==(const FullGrid& a, const FullGrid& b) { return a.shape_ == b.shape_ && a.digits_ == b.digits_; }
  friend std::strong_ordering operator<=>(const FullGrid& a, const FullGrid& b) { return a.digits_ <=> b.digits_; }

 private:
  const Shape* shape_;
  std::array<std::uint8_t, kMaxCells> digits_{};  // cells beyond the shape stay 0, so that comparing all of it is right
};

}  // namespace cp
