// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_rectangles.h"

#include <algorithm>

namespace cp::oracle {

std::set<std::set<Cell>> plain_rectangles(const Position& position) {
  std::set<std::set<Cell>> found;
  for (const std::set<House>& rows : choices(houses_of_kind(position, HouseKind::kRow), 2)) {
    for (const std::set<House>& columns : choices(houses_of_kind(position, HouseKind::kColumn), 2)) {
      std::set<Cell> corners;
      std::set<int> boxes;
      bool has_given = false;
      for (const Cell cell : position.shape().all_cells()) {
        const auto houses = position.shape().houses_of(cell);
        if (!rows.contains(houses[0]) || !columns.contains(houses[1])) continue;
        corners.insert(cell);
        boxes.insert(position.shape().box_of(cell));
        has_given = has_given || position.givens().has(cell);
      }
      if (boxes.size() == 2 && !has_given) found.insert(corners);
    }
  }
  return found;
}

std::vector<PlainRectangle> plain_pair_rectangles(const Position& position) {
  std::vector<PlainRectangle> found;
  for (const std::set<Cell>& corners : plain_rectangles(position)) {
    for (const std::set<Digit>& pair : choices(digits_in(position, corners), 2)) {
      if (candidates_there(position, corners, pair).size() != 8) continue;
      PlainRectangle rectangle{corners, pair, {}, minus(digits_in(position, corners), pair)};
      for (const Cell corner : corners) {
        if (digits_in(position, {corner}) != pair) rectangle.rich.insert(corner);
      }
      found.push_back(rectangle);
    }
  }
  return found;
}

bool lies_in(const Position& position, const std::set<Cell>& cells, House house) {
  return std::all_of(cells.begin(), cells.end(), [&](Cell cell) { return position.shape().cells(house).has(cell); });
}

std::set<Cell> seeing_all(const Position& position, const std::set<Cell>& cells) {
  std::set<Cell> found;
  for (const Cell cell : position.shape().all_cells()) {
    bool sees = !cells.contains(cell);
    for (const Cell other : cells) {
      const auto mine = position.shape().houses_of(cell);
      const auto theirs = position.shape().houses_of(other);
      sees = sees && (mine[0] == theirs[0] || mine[1] == theirs[1] || mine[2] == theirs[2]);
    }
    if (sees) found.insert(cell);
  }
  return found;
}

Cell corner_across(const Position& position, const std::set<Cell>& corners, Cell corner) {
  Cell across = corner;
  for (const Cell other : corners) {
    const bool same_row = position.shape().row_of(other) == position.shape().row_of(corner);
    if (!same_row && position.shape().column_of(other) != position.shape().column_of(corner)) across = other;
  }
  return across;
}

void note_rectangle(Conclusions& conclusions, const std::set<Candidate>& struck) {
  if (!struck.empty() && !conclusions.contains({{}, struck})) conclusions.insert({{}, struck});
}

}  // namespace cp::oracle
