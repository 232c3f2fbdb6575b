// SPDX-License-Identifier: Apache-2.0
#include "lesson/similar_grid.h"

#include <algorithm>

#include "base/rng.h"

namespace cp {

namespace {

// Lines 0 .. side-1 moved in groups of `size`: the groups among themselves and the lines inside each.
std::vector<int> moved_lines(int side, int size, Rng& rng) {
  std::vector<int> groups;
  for (int group = 0; group < side / size; ++group) groups.push_back(group);
  rng.shuffle(groups);
  std::vector<int> lines;
  for (const int group : groups) {
    std::vector<int> inside;
    for (int line = 0; line < size; ++line) inside.push_back(group * size + line);
    rng.shuffle(inside);
    lines.insert(lines.end(), inside.begin(), inside.end());
  }
  return lines;
}

}  // namespace

Similarity::Similarity(const Shape& shape, std::uint64_t seed) : shape_(shape) {
  Rng rng(seed);
  const std::vector<int> rows = moved_lines(shape.side(), shape.box_rows(), rng);
  const std::vector<int> columns = moved_lines(shape.side(), shape.box_columns(), rng);
  // Only square boxes stay boxes when the grid is turned over.
  const bool is_turned = shape.box_rows() == shape.box_columns() && rng.below(2) == 1;
  for (const Cell cell : shape.all_cells()) {
    const int row = rows[static_cast<std::size_t>(shape.row_of(cell))];
    const int column = columns[static_cast<std::size_t>(shape.column_of(cell))];
    cells_.push_back(is_turned ? shape.cell_at(column, row) : shape.cell_at(row, column));
  }
  for (const Digit digit : shape.digits()) digits_.push_back(digit);
  rng.shuffle(digits_);
}

House Similarity::image(House house) const {
  CellSet moved;
  for (const Cell cell : shape_.cells(house)) moved.add(image(cell));
  for (int i = 0; i < shape_.house_count(); ++i) {
    if (shape_.cells(House(i)) == moved) return House(i);
  }
  return house;
}

std::vector<Candidate> Similarity::image(const std::vector<Candidate>& candidates) const {
  std::vector<Candidate> moved;
  for (const Candidate& each : candidates) moved.push_back(image(each));
  std::sort(moved.begin(), moved.end());
  return moved;
}

std::vector<Weight> Similarity::image(const std::vector<Weight>& weights) const {
  std::vector<Weight> moved;
  for (const Weight& each : weights) moved.push_back({image(each.house), each.weight});
  std::sort(moved.begin(), moved.end());
  return moved;
}

Position Similarity::image(const Position& position) const {
  Position moved(shape_);
  for (const Cell cell : position.givens()) moved.place_given(image(cell), image(*position.digit_at(cell)));
  for (const Cell cell : position.placed() - position.givens()) moved.place(image(cell), image(*position.digit_at(cell)));
  for (const Cell cell : position.open()) {
    for (const Digit digit : shape_.digits() - position.candidates(cell)) moved.eliminate(image(Candidate{cell, digit}));
  }
  return moved;
}

}  // namespace cp
