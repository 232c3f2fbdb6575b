// SPDX-License-Identifier: Apache-2.0
#include "balance/sides.h"

#include <cassert>
#include <cstring>

namespace cp {

namespace {

// One choice in one band or stack.
struct Choice {
  std::uint32_t houses = 0;
  std::uint32_t mirror = 0;
};

std::uint32_t bit(House house) { return std::uint32_t{1} << house.index; }

// Every subset of the lines and every subset of the boxes; empty and full are the same for both and stand once.
std::vector<Choice> choices(const std::vector<House>& lines, const std::vector<House>& boxes) {
  std::vector<Choice> result;
  for (const auto* houses : {&lines, &boxes}) {
    const std::uint32_t full = (std::uint32_t{1} << houses->size()) - 1;
    for (std::uint32_t subset = 0; subset <= full; ++subset) {
      if (houses == &boxes && (subset == 0 || subset == full)) continue;
      Choice choice;
      for (std::size_t i = 0; i < houses->size(); ++i) {
        (((subset >> i) & 1U) != 0 ? choice.houses : choice.mirror) |= bit((*houses)[i]);
      }
      result.push_back(choice);
    }
  }
  return result;
}

std::vector<Side> combine(const Position& position, const std::vector<std::vector<Choice>>& groups) {
  const Shape& shape = position.shape();
  assert(shape.cell_count() <= 128 && shape.house_count() <= 32);
  const TwoWords open = two_words(position.open());
  std::vector<TwoWords> cells;
  std::vector<DigitBytes> known;
  for (int i = 0; i < shape.house_count(); ++i) {
    const House house(i);
    cells.push_back(two_words(shape.cells(house)) & open);
    DigitBytes bytes = {};
    for (const Digit digit : shape.digits()) bytes[digit.index] = static_cast<std::int8_t>((position.is_placed_in(house, digit) ? 1 : 0) - 1);
    known.push_back(bytes);
  }
  std::vector<Side> sides(1);
  for (const auto& group : groups) {
    std::vector<Side> longer;
    for (const Side& side : sides) {
      for (const Choice& choice : group) {
        Side next = side;
        next.houses |= choice.houses;
        next.mirror |= choice.mirror;
        for (std::uint32_t left = choice.houses; left != 0; left &= left - 1) {
          const auto house = static_cast<std::size_t>(std::countr_zero(left));
          next.open = next.open | cells[house];
          next.known += known[house];
        }
        longer.push_back(next);
      }
    }
    sides = std::move(longer);
  }
  return sides;
}

}  // namespace

std::vector<Side> left_sides(const Position& position) {
  const Shape& shape = position.shape();
  std::vector<std::vector<Choice>> groups;
  for (int band = 0; band < shape.band_count(); ++band) {
    std::vector<House> rows;
    std::vector<House> boxes;
    for (int i = 0; i < shape.box_rows(); ++i) rows.push_back(shape.row(band * shape.box_rows() + i));
    for (int i = 0; i < shape.stack_count(); ++i) boxes.push_back(shape.box(band * shape.stack_count() + i));
    groups.push_back(choices(rows, boxes));
  }
  return combine(position, groups);
}

std::vector<Side> right_sides(const Position& position) {
  const Shape& shape = position.shape();
  std::vector<std::vector<Choice>> groups;
  for (int stack = 0; stack < shape.stack_count(); ++stack) {
    std::vector<House> columns;
    std::vector<House> boxes;
    for (int i = 0; i < shape.box_columns(); ++i) columns.push_back(shape.column(stack * shape.box_columns() + i));
    for (int i = 0; i < shape.band_count(); ++i) boxes.push_back(shape.box(i * shape.stack_count() + stack));
    groups.push_back(choices(columns, boxes));
  }
  return combine(position, groups);
}

std::vector<SideClass> classes_of(const std::vector<Side>& sides) {
  std::vector<SideClass> classes;
  // Open addressing: the number of a class plus one, 0 when the slot is free.
  std::vector<std::uint32_t> slots(std::bit_ceil(sides.size() * 4));
  const auto slot_of = [&](const Side& side) {
    std::array<std::uint64_t, 2> known{};
    std::memcpy(known.data(), &side.known, sizeof(side.known));
    std::uint64_t hash = side.open.low * 0x9E3779B97F4A7C15ULL + side.open.high * 0xC2B2AE3D27D4EB4FULL + known[0] * 0x165667B19E3779F9ULL + known[1] * 0xD6E8FEB86659FD93ULL;
    hash = (hash ^ (hash >> 32)) * 0x9E3779B97F4A7C15ULL;
    std::size_t at = static_cast<std::size_t>(hash >> 32) & (slots.size() - 1);
    while (slots[at] != 0) {
      const SideClass& of = classes[slots[at] - 1];
      if (of.open == side.open && std::memcmp(&of.known, &side.known, sizeof(side.known)) == 0) break;
      at = (at + 1) & (slots.size() - 1);
    }
    return at;
  };
  const auto fewer = [](std::uint32_t a, std::uint32_t b) {
    return std::popcount(a) != std::popcount(b) ? std::popcount(a) < std::popcount(b) : a < b;
  };
  for (const Side& side : sides) {
    std::uint32_t& slot = slots[slot_of(side)];
    if (slot == 0) {
      classes.push_back({side.open, side.known, side.houses, side.mirror, static_cast<std::uint32_t>(&side - sides.data())});
      slot = static_cast<std::uint32_t>(classes.size());
    }
    SideClass& of = classes[slot - 1];
    if (fewer(side.houses, of.houses)) of.houses = side.houses;
    if (fewer(side.mirror, of.mirror)) of.mirror = side.mirror;
  }
  return classes;
}

}  // namespace cp
