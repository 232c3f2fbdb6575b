// SPDX-License-Identifier: Apache-2.0
// Six open cells, in three boxes of a band or stack, two lines and three crossing lines: each has two or three of three
// digits. One cell with extras: it loses the three. One digit as extras: it leaves what sees all cells with it.
#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

namespace {

// Open cells where some lines cross others, when these are six in three boxes, two in each.
std::set<Cell> plain_six(const Position& position, const std::set<House>& lines, const std::set<House>& crossing) {
  std::set<Cell> six;
  std::multiset<int> boxes;
  for (const House line : lines) {
    for (const House other : crossing) {
      for (const Cell cell : open_cells(position, line)) {
        if (!position.shape().cells(other).has(cell)) continue;
        six.insert(cell);
        boxes.insert(position.shape().box_of(cell));
      }
    }
  }
  bool two_each = six.size() == 6;
  for (const int box : boxes) two_each = two_each && boxes.count(box) == 2;
  return two_each ? six : std::set<Cell>{};
}

}  // namespace

Conclusions extended_rectangle_twin(const Position& position) {
  Conclusions found;
  for (const auto& [kind, other_kind] : {std::pair{HouseKind::kRow, HouseKind::kColumn}, {HouseKind::kColumn, HouseKind::kRow}}) {
    for (const std::set<House>& lines : choices(houses_of_kind(position, kind), 2)) {
      for (const std::set<House>& crossing : choices(houses_of_kind(position, other_kind), 3)) {
        const std::set<Cell> six = plain_six(position, lines, crossing);
        for (const std::set<Digit>& triple : choices(digits_in(position, six), 3)) {
          std::set<Cell> rich;
          bool fits = true;
          for (const Cell cell : six) {
            fits = fits && candidates_there(position, {cell}, triple).size() >= 2;
            if (!minus(digits_in(position, {cell}), triple).empty()) rich.insert(cell);
          }
          const std::set<Digit> extras = minus(digits_in(position, six), triple);
          if (fits && rich.size() == 1) note_rectangle(found, candidates_there(position, rich, triple));
          if (fits && rich.size() > 1 && extras.size() == 1) note_rectangle(found, candidates_there(position, seeing_all(position, rich), extras));
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
