// SPDX-License-Identifier: Apache-2.0
#include "exact/full_grid.h"

#include "grid/notation.h"

namespace cp {

std::optional<FullGrid> FullGrid::from(const Position& position) {
  if (!position.is_complete()) return std::nullopt;
  FullGrid grid(position.shape());
  for (const Cell cell : position.shape().all_cells()) grid.set(cell, position.candidates(cell).lowest());
  return grid;
}

std::optional<FullGrid> FullGrid::from_line(std::string_view line) {
  const Shape* shape = find_shape_with_cells(static_cast<int>(line.size()));
  if (shape == nullptr) return std::nullopt;
  FullGrid grid(*shape);
  for (const Cell cell : shape->all_cells()) {
    const auto digit = digit_from(line[cell.index], *shape);
    if (!digit) return std::nullopt;
    grid.set(cell, *digit);
  }
  return grid;
}

bool FullGrid::is_valid() const {
  for (int i = 0; i < shape_->house_count(); ++i) {
    DigitSet seen;
    for (const Cell cell : shape_->cells(House(i))) seen.add(at(cell));
    if (seen != shape_->digits()) return false;
  }
  return true;
}

bool FullGrid::fits(const Position& position) const {
  if (shape_ != &position.shape()) return false;
  for (const Cell cell : shape_->all_cells()) {
    if (!position.has({cell, at(cell)})) return false;
  }
  return true;
}

Position FullGrid::with_givens(const CellSet& givens) const {
  Position position(*shape_);
  for (const Cell cell : givens & shape_->all_cells()) position.place_given(cell, at(cell));
  return position;
}

std::string FullGrid::to_line() const {
  std::string line;
  for (const Cell cell : shape_->all_cells()) line += Shape::name_of(at(cell));
  return line;
}

}  // namespace cp
