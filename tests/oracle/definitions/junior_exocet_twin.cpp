// SPDX-License-Identifier: Apache-2.0
// Base, targets and cross lines, cell by cell.
#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

namespace {

std::set<Cell> cells_of(const Position& position, House house) {
  std::set<Cell> cells;
  for (const Cell cell : position.shape().cells(house)) cells.insert(cell);
  return cells;
}

// The house of a kind that a cell is in; the boxes that a line runs through.
House house_of(const Position& position, Cell cell, HouseKind kind) {
  for (const House house : houses_of_kind(position, kind)) {
    if (position.shape().cells(house).has(cell)) return house;
  }
  return {};
}
std::set<House> boxes_of(const Position& position, House line) {
  std::set<House> boxes;
  for (const Cell cell : position.shape().cells(line)) boxes.insert(house_of(position, cell, HouseKind::kBox));
  return boxes;
}

// The cells of the band (the boxes that the base line runs through).
std::set<Cell> band_of(const Position& position, House base_line) {
  std::set<Cell> band;
  for (const House box : boxes_of(position, base_line)) band.merge(cells_of(position, box));
  return band;
}

// Within the band, off the base line, does the cross line hold base digits only at the target?
bool is_target(const Position& position, Cell target, House cross, House base_line, const std::set<Digit>& digits) {
  std::set<Cell> beside = minus(cells_of(position, cross), cells_of(position, base_line));
  beside = minus(beside, minus(beside, band_of(position, base_line)));
  if (!beside.erase(target) || position.is_placed(target)) return false;
  for (const Digit digit : digits) {
    if (!holders(position, beside, digit).empty()) return false;
  }
  return true;
}

// Do all base digits keep to two lines outside the band, in the three cross lines?
bool keeps_to_two(const Position& position, const std::set<House>& crosses, House base_line, const std::set<Digit>& digits) {
  for (const Digit digit : digits) {
    std::set<House> lines;
    for (const House cross : crosses) {
      for (const Cell cell : holders(position, minus(cells_of(position, cross), band_of(position, base_line)), digit)) {
        lines.insert(house_of(position, cell, position.shape().kind(base_line)));
      }
    }
    if (lines.size() > 2) return false;
  }
  return true;
}

void note_base(const Position& position, House base_line, House box, const std::set<Cell>& base, Conclusions& found) {
  const HouseKind cross_kind = position.shape().kind(base_line) == HouseKind::kRow ? HouseKind::kColumn : HouseKind::kRow;
  const std::set<Digit> digits = digits_in(position, base);
  std::set<Cell> targets;
  for (const Cell cell : minus(band_of(position, base_line), cells_of(position, box))) {
    if (is_target(position, cell, house_of(position, cell, cross_kind), base_line, digits)) targets.insert(cell);
  }
  std::set<House> thirds;
  for (const Cell cell : cells_of(position, box)) thirds.insert(house_of(position, cell, cross_kind));
  for (const Cell cell : base) thirds.erase(house_of(position, cell, cross_kind));
  for (const std::set<Cell>& two : choices(targets, 2)) {
    const House one = house_of(position, *two.begin(), cross_kind), other = house_of(position, *two.rbegin(), cross_kind);
    if (house_of(position, *two.begin(), HouseKind::kBox) == house_of(position, *two.rbegin(), HouseKind::kBox)) continue;
    for (const House third : thirds) {
      if (keeps_to_two(position, {third, one, other}, base_line, digits)) note_new(found, candidates_there(position, two, minus(all_digits(position), digits)));
    }
  }
}

}  // namespace

Conclusions junior_exocet_twin(const Position& position) {
  Conclusions found;
  for (const House line : minus(all_houses(position), houses_of_kind(position, HouseKind::kBox))) {
    for (const House box : boxes_of(position, line)) {
      const std::set<Cell> open = open_cells(position, line);
      for (const std::set<Cell>& base : choices(minus(open, minus(open, open_cells(position, box))), 2)) {
        const std::size_t size = digits_in(position, base).size();
        if (size == 3 || size == 4) note_base(position, line, box, base, found);
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
