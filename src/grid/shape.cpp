// SPDX-License-Identifier: Apache-2.0
#include "grid/shape.h"

#include <cassert>
#include <deque>

#include "base/small_letters.h"
#include "base/text.h"

namespace cp {

Shape::Shape(std::string_view name, int box_rows, int box_columns)
    : name_(name), side_(box_rows * box_columns), box_rows_(box_rows), box_columns_(box_columns) {
  assert(side_ <= kMaxSide);
  house_cells_.resize(static_cast<std::size_t>(house_count()));
  for (int i = 0; i < cell_count(); ++i) {
    const Cell cell(i);
    all_cells_.add(cell);
    box_of_.push_back(static_cast<std::uint8_t>((row_of(cell) / box_rows_) * (side_ / box_columns_) + column_of(cell) / box_columns_));
    for (const House house : houses_of(cell)) house_cells_[house.index].add(cell);
  }
  for (int i = 0; i < cell_count(); ++i) {
    CellSet seen;
    for (const House house : houses_of(Cell(i))) seen |= cells(house);
    seen.remove(Cell(i));
    peers_.push_back(seen);
  }
}

CellSet Shape::common_peers(const CellSet& cells) const {
  CellSet common = all_cells_;
  for (const Cell cell : cells) common &= peers_[cell.index];
  return common;
}

std::string Shape::name_of(Cell cell) const { return "r" + to_text(row_of(cell) + 1) + "c" + to_text(column_of(cell) + 1); }

std::string Shape::name_of(House house) const {
  static constexpr std::array<char, 3> kLetters = {'r', 'c', 'b'};
  return kLetters[static_cast<std::size_t>(kind(house))] + to_text(number(house) + 1);
}

char Shape::name_of(Digit digit) {
  return static_cast<char>(digit.index < 9 ? '1' + digit.index : 'A' + (digit.index - 9));
}

std::string Shape::long_name_of(House house) const {
  static constexpr std::array<std::string_view, 3> kWords = {"row ", "column ", "box "};
  return std::string(kWords[static_cast<std::size_t>(kind(house))]) + to_text(number(house) + 1);
}

namespace {


// Reads a number 1..side at `at`, moving it on; 0 when there is none or it is out of range.
int read_number(std::string_view text, std::size_t& at, int side) {
  int value = 0;
  const std::size_t start = at;
  while (at < text.size() && text[at] >= '0' && text[at] <= '9' && at - start < 3) value = value * 10 + (text[at++] - '0');
  return value <= side ? value : 0;
}

Error bad_name(std::string message, std::string hint, std::string_view text) {
  return Error{ErrorCode::kBadName, std::move(message), std::move(hint), TextSpan{0, text.size(), 1, 1}};
}

}  // namespace

Result<Cell> Shape::parse_cell(std::string_view text) const {
  std::size_t at = 0;
  if (text.size() >= 4 && small_letter(text[0]) == 'r') {
    at = 1;
    const int row = read_number(text, at, side_);
    if (row > 0 && at < text.size() && small_letter(text[at]) == 'c') {
      ++at;
      const int column = read_number(text, at, side_);
      if (column > 0 && at == text.size()) return cell_at(row - 1, column - 1);
    }
  }
  const std::string last = to_text(side_);
  return bad_name("'" + std::string(text) + "' is not a cell of a " + std::string(name_) + " grid",
                  "cells are written r1c1 to r" + last + "c" + last, text);
}

Result<House> Shape::parse_house(std::string_view text) const {
  if (text.size() >= 2) {
    std::size_t at = 1;
    const char letter = small_letter(text[0]);
    const int number = read_number(text, at, side_);
    if (number > 0 && at == text.size()) {
      if (letter == 'r') return row(number - 1);
      if (letter == 'c') return column(number - 1);
      if (letter == 'b') return box(number - 1);
    }
  }
  const std::string last = to_text(side_);
  return bad_name("'" + std::string(text) + "' is not a house of a " + std::string(name_) + " grid",
                  "rows are r1 to r" + last + ", columns c1 to c" + last + ", boxes b1 to b" + last, text);
}

const std::vector<const Shape*>& all_shapes() {
  static const std::deque<Shape> kShapes = [] {
    std::deque<Shape> shapes;
#define CP_SHAPE(name, box_rows, box_columns) shapes.emplace_back(name, box_rows, box_columns);
#include "grid/shapes.def"
#undef CP_SHAPE
    return shapes;
  }();
  static const std::vector<const Shape*> kPointers = [] {
    std::vector<const Shape*> pointers;
    for (const Shape& shape : kShapes) pointers.push_back(&shape);
    return pointers;
  }();
  return kPointers;
}

const Shape* find_shape(std::string_view name) {
  for (const Shape* shape : all_shapes()) {
    if (shape->name() == name) return shape;
  }
  return nullptr;
}

const Shape* find_shape_with_cells(int cell_count) {
  for (const Shape* shape : all_shapes()) {
    if (shape->cell_count() == cell_count) return shape;
  }
  return nullptr;
}

const Shape& standard_shape() {
  static const Shape* const kStandard = find_shape("9x9");
  return *kStandard;
}

}  // namespace cp
