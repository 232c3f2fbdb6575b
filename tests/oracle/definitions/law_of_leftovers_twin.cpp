// SPDX-License-Identifier: Apache-2.0
// A line and a box: as many cells that can hold a digit of some set on one side as cells that hold nothing else on the other.
#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

namespace {

void note_leftovers(const Position& position, House one, House other, Conclusions& found) {
  const std::set<Cell> of_one = open_cells(position, one), of_other = open_cells(position, other);
  const std::set<Cell> x_side = minus(of_one, of_other), y_side = minus(of_other, of_one);
  std::set<Digit> left;
  for (const Digit digit : all_digits(position)) {
    if (!position.is_placed_in(one, digit) && !position.is_placed_in(other, digit)) left.insert(digit);
  }
  for (std::size_t size = 2; size + 2 <= left.size(); ++size) {
    for (const std::set<Digit>& digits : choices(left, size)) {
      const std::set<Cell> x = minus(x_side, minus(x_side, places_of(position, one, digits)));
      std::set<Cell> y;
      for (const Cell cell : y_side) {
        if (minus(digits_in(position, {cell}), digits).empty()) y.insert(cell);
      }
      if (y.empty() || y.size() >= size || y == y_side || x.size() != y.size()) continue;
      std::set<Candidate> struck = candidates_there(position, minus(y_side, y), digits);
      struck.merge(candidates_there(position, x, minus(all_digits(position), digits)));
      note_new(found, struck);
    }
  }
}

}  // namespace

Conclusions law_of_leftovers_twin(const Position& position) {
  Conclusions found;
  if (position.shape().side() > 9) return found;
  for (const House box : houses_of_kind(position, HouseKind::kBox)) {
    for (const House line : minus(all_houses(position), houses_of_kind(position, HouseKind::kBox))) {
      if (!position.shape().cells(box).meets(position.shape().cells(line))) continue;
      note_leftovers(position, line, box, found);
      note_leftovers(position, box, line, found);
    }
  }
  return found;
}

}  // namespace cp::oracle
