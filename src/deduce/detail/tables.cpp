// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/tables.h"

namespace cp::deduce {

namespace {

void set_bit(Mask& mask, int bit) { mask = static_cast<Mask>(mask | (1U << bit)); }

}  // namespace

std::vector<House> houses_in_order(const Shape& shape) {
  std::vector<House> houses;
  houses.reserve(static_cast<std::size_t>(shape.house_count()));
  for (int i = 0; i < shape.side(); ++i) houses.push_back(shape.box(i));
  for (int i = 0; i < shape.side(); ++i) houses.push_back(shape.row(i));
  for (int i = 0; i < shape.side(); ++i) houses.push_back(shape.column(i));
  return houses;
}

HouseTable::HouseTable(const Position& position, House house) {
  for (const Cell cell : position.shape().cells(house) - position.placed()) {
    const auto index = static_cast<std::size_t>(cell_count);
    cells[index] = cell;
    digits_of[index] = position.candidates(cell).bits();
    for (const Digit digit : position.candidates(cell)) set_bit(cells_of[digit.index], cell_count);
    ++cell_count;
  }
}

DigitTable::DigitTable(const Position& position, Digit digit) {
  const Shape& shape = position.shape();
  for (const Cell cell : position.places(digit)) {
    const int row = shape.row_of(cell);
    const int column = shape.column_of(cell);
    set_bit(columns_of[static_cast<std::size_t>(row)], column);
    set_bit(rows_of[static_cast<std::size_t>(column)], row);
  }
}

}  // namespace cp::deduce
