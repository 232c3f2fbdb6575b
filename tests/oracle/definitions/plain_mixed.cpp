// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_mixed.h"

#include <algorithm>

namespace cp::oracle {

namespace {

using Ways = std::set<std::set<House>>;

constexpr int kLargestSide = 9;

// Ways to choose houses, no more than `size`, that hold all the places: grown place by place.
Ways ways_to_cover(const Position& position, const std::set<Cell>& places, const std::set<House>& allowed, std::size_t size) {
  Ways ways = {{}};
  for (const Cell place : places) {
    Ways longer;
    for (const std::set<House>& way : ways) {
      const auto houses = position.shape().houses_of(place);
      const bool is_held = std::any_of(houses.begin(), houses.end(), [&](House house) { return way.contains(house); });
      if (is_held) longer.insert(way);
      for (const House house : houses) {
        if (is_held || way.size() == size || !allowed.contains(house)) continue;
        std::set<House> more = way;
        more.insert(house);
        longer.insert(more);
      }
    }
    ways = longer;
  }
  return ways;
}

bool has_kind(const Position& position, const std::set<House>& houses, HouseKind kind) {
  return std::any_of(houses.begin(), houses.end(), [&](House house) { return position.shape().kind(house) == kind; });
}

bool is_wanted(const Position& position, Digit digit, const std::set<House>& bases, const std::set<House>& covers, bool is_mutant) {
  for (const House base : bases) {
    for (const House cover : covers) {
      if (minus(places_of(position, base, {digit}), places_of(position, cover, {digit})).empty()) return false;
    }
  }
  const bool rows_in_columns = !has_kind(position, bases, HouseKind::kColumn) && !has_kind(position, covers, HouseKind::kRow);
  const bool columns_in_rows = !has_kind(position, bases, HouseKind::kRow) && !has_kind(position, covers, HouseKind::kColumn);
  if (is_mutant) return !rows_in_columns && !columns_in_rows;
  return has_kind(position, bases, HouseKind::kBox) || has_kind(position, covers, HouseKind::kBox);
}

std::set<Candidate> struck_by(const Position& position, Digit digit, const std::set<House>& bases, const std::set<House>& covers) {
  std::set<Candidate> struck;
  for (const Cell cell : places_in_grid(position, digit)) {
    int balance = 0;
    for (const House house : position.shape().houses_of(cell)) balance += (covers.contains(house) ? 1 : 0) - (bases.contains(house) ? 1 : 0);
    if (balance > 0) struck.insert({cell, digit});
  }
  return struck;
}

}  // namespace

void note_mixed(Conclusions& found, const Position& position, std::size_t size, const HouseKinds& base_kinds, const HouseKinds& cover_kinds, bool is_mutant) {
  for (const Digit digit : all_digits(position)) {
    std::set<House> can_be_base;
    std::set<House> can_cover;
    for (const House house : all_houses(position)) {
      if (base_kinds.contains(position.shape().kind(house)) && places_of(position, house, {digit}).size() >= 2) can_be_base.insert(house);
      if (cover_kinds.contains(position.shape().kind(house))) can_cover.insert(house);
    }
    for (const std::set<House>& bases : choices(can_be_base, size)) {
      std::set<Cell> places;
      std::size_t count = 0;
      for (const House base : bases) {
        std::set<Cell> more = places_of(position, base, {digit});
        count += more.size();
        places.merge(more);
      }
      if (places.size() != count) continue;  // two bases share a place
      const Ways ways = ways_to_cover(position, places, minus(can_cover, bases), size);
      if (std::any_of(ways.begin(), ways.end(), [&](const auto& way) { return way.size() < size; })) continue;
      for (const std::set<House>& covers : ways) {
        if (is_wanted(position, digit, bases, covers, is_mutant)) note_once(found, struck_by(position, digit, bases, covers));
      }
    }
  }
}

Conclusions plain_franken(const Position& position, std::size_t size) {
  Conclusions found;
  if (position.shape().side() > kLargestSide) return found;
  note_mixed(found, position, size, {HouseKind::kRow, HouseKind::kBox}, {HouseKind::kColumn, HouseKind::kBox}, false);
  note_mixed(found, position, size, {HouseKind::kColumn, HouseKind::kBox}, {HouseKind::kRow, HouseKind::kBox}, false);
  return found;
}

Conclusions plain_mutant(const Position& position, std::size_t size) {
  Conclusions found;
  const HouseKinds all = {HouseKind::kRow, HouseKind::kColumn, HouseKind::kBox};
  if (position.shape().side() <= kLargestSide) note_mixed(found, position, size, all, all, true);
  return found;
}

}  // namespace cp::oracle
