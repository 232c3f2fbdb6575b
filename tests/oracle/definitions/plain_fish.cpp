// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_fish.h"

namespace cp::oracle {

namespace {

// The lines of one kind in which some line of the group has a place for the digit.
std::set<House> lines_used(const Position& position, const std::set<House>& group, HouseKind kind, Digit digit) {
  std::set<House> used;
  for (const House line : group) {
    for (const Cell cell : places_of(position, line, {digit})) {
      for (const House house : position.shape().houses_of(cell)) {
        if (position.shape().kind(house) == kind) used.insert(house);
      }
    }
  }
  return used;
}

bool has_smaller_fish(const Position& position, const std::set<House>& bases, HouseKind kind, Digit digit) {
  for (std::size_t size = 1; size < bases.size(); ++size) {
    for (const auto& part : choices(bases, size)) {
      if (lines_used(position, part, kind, digit).size() <= size) return true;
    }
  }
  return false;
}

}  // namespace

Conclusions plain_fish(const Position& position, std::size_t size) {
  Conclusions found;
  for (const auto& [base_kind, cover_kind] : {std::pair{HouseKind::kRow, HouseKind::kColumn}, {HouseKind::kColumn, HouseKind::kRow}}) {
    for (const Digit digit : all_digits(position)) {
      for (const std::set<House>& bases : choices(houses_of_kind(position, base_kind), size)) {
        const std::set<House> covers = lines_used(position, bases, cover_kind, digit);
        if (covers.size() != size || has_smaller_fish(position, bases, cover_kind, digit)) continue;
        std::set<Cell> struck;
        for (const House cover : covers) struck.merge(places_of(position, cover, {digit}));
        for (const House base : bases) struck = minus(struck, open_cells(position, base));
        note_struck(found, candidates_there(position, struck, {digit}));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
