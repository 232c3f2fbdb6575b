// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/basics_state.h"

#include <bit>
#include <utility>

namespace cp::deduce {

namespace {

using Mask = BasicsState::Mask;

constexpr Mask bit(std::size_t index) { return static_cast<Mask>(1U << index); }
std::size_t lowest(Mask mask) { return static_cast<std::size_t>(std::countr_zero(mask)); }
void drop_lowest(Mask& mask) { mask = static_cast<Mask>(mask & (mask - 1)); }
void set(Mask& mask, std::size_t index) { mask = static_cast<Mask>(mask | (1U << index)); }

}  // namespace

BasicsGeometry::BasicsGeometry(const Shape& shape) : side(shape.side()), box_rows(shape.box_rows()), box_columns(shape.box_columns()) {
  for (int i = 0; i < shape.house_count(); ++i) {
    const House house(i);
    const auto kind = static_cast<std::size_t>(shape.kind(house));
    const auto number = static_cast<std::size_t>(shape.number(house));
    std::size_t index = 0;
    for (const Cell cell : shape.cells(house)) {
      spots[cell.index].house[kind] = static_cast<std::uint8_t>(number);
      spots[cell.index].index[kind] = static_cast<std::uint8_t>(index);
      cell_at[kind][number][index++] = cell.index;
    }
  }
  for (int number = 0; number < shape.side(); ++number) {
    for (const Cell cell : shape.cells(shape.box(number))) {
      const Spot& spot = spots[cell.index];
      const std::size_t box = spot.house[BasicsState::kBox];
      const std::size_t place = spot.index[BasicsState::kBox];
      const auto width = static_cast<std::size_t>(box_columns);
      const std::array<std::size_t, 2> nth = {place / width, place % width};
      for (std::size_t kind = 0; kind < 2; ++kind) {
        Overlap& overlap = overlaps[kind][box][nth[kind]];
        overlap.line = spot.house[kind];
        overlap.in_box = static_cast<Mask>(overlap.in_box | bit(place));
        overlap.in_line = static_cast<Mask>(overlap.in_line | bit(spot.index[kind]));
      }
    }
  }
}

const BasicsGeometry& BasicsGeometry::of(const Shape& shape) {
  static const std::vector<BasicsGeometry> kGeometries = [] {
    std::vector<BasicsGeometry> geometries;
    for (const Shape* each : all_shapes()) geometries.emplace_back(*each);
    return geometries;
  }();
  std::size_t at = 0;
  while (all_shapes()[at] != &shape) ++at;  // shapes live for the whole program and only in all_shapes()
  return kGeometries[at];
}

BasicsState::BasicsState(const Position& position, bool use_hidden_singles)
    : geometry_(BasicsGeometry::of(position.shape())), use_hidden_singles_(use_hidden_singles) {
  for (const Cell cell : position.open()) read_open_cell(cell, position.candidates(cell).bits());
  const Mask all = DigitSet::first(geometry_.side).bits();
  std::array<std::array<Mask, kMaxSide>, 3> missing{};  // digits not placed in the house
  for (auto& kind : missing) kind.fill(all);
  for (const Cell cell : position.placed()) {
    const auto& spot = geometry_.spots[cell.index];
    const Mask digit = position.candidates(cell).bits();
    for (std::size_t kind = 0; kind < 3; ++kind) {
      Mask& left = missing[kind][spot.house[kind]];
      broken_ = broken_ || (left & digit) == 0;
      left = static_cast<Mask>(left & ~digit);
    }
  }
  for (std::size_t kind = 0; kind < 3; ++kind) {
    for (std::size_t number = 0; number < static_cast<std::size_t>(geometry_.side); ++number) {
      for (Mask left = missing[kind][number]; left != 0; drop_lowest(left)) {
        const Mask places = places_[kind][number][lowest(left)];
        broken_ = broken_ || places == 0;
        if (std::has_single_bit(places)) push_lone(kind, number, lowest(left));
      }
    }
    changed_houses_[kind] = all;
    for (std::size_t digit = 0; digit < static_cast<std::size_t>(geometry_.side); ++digit) changed_for_digit_[kind][digit] = all;
  }
  changed_digits_ = all;
}

void BasicsState::read_open_cell(Cell cell, Mask digits) {
  candidates_[cell.index] = digits;
  broken_ = broken_ || digits == 0;
  if (std::has_single_bit(digits)) singles_[static_cast<std::size_t>(single_count_++)] = cell.index;
  const auto& spot = geometry_.spots[cell.index];
  for (std::size_t kind = 0; kind < 3; ++kind) {
    set(open_[kind][spot.house[kind]], spot.index[kind]);
    auto& places = places_[kind][spot.house[kind]];
    for (Mask left = digits; left != 0; drop_lowest(left)) set(places[lowest(left)], spot.index[kind]);
  }
}

void BasicsState::lose_place(std::size_t kind, std::size_t number, std::size_t index, std::size_t digit) {
  Mask& places = places_[kind][number][digit];
  places = static_cast<Mask>(places & ~bit(index));
  set(changed_for_digit_[kind][digit], number);
  set(changed_houses_[kind], number);
  if (places == 0) {
    broken_ = true;
  } else if ((places & (places - 1)) == 0) {
    push_lone(kind, number, digit);
  }
}

void BasicsState::push_lone(std::size_t kind, std::size_t number, std::size_t digit) {
  if (!use_hidden_singles_) return;
  lones_[static_cast<std::size_t>(lone_count_++)] = {static_cast<std::uint8_t>(kind), static_cast<std::uint8_t>(number), static_cast<std::uint8_t>(digit)};
}

void BasicsState::lose_candidate(std::size_t cell, std::size_t digit) {
  Mask& left = candidates_[cell];
  left = static_cast<Mask>(left & ~bit(digit));
  set(changed_digits_, digit);
  if (left == 0) {
    broken_ = true;
  } else if ((left & (left - 1)) == 0) {
    singles_[static_cast<std::size_t>(single_count_++)] = static_cast<std::uint8_t>(cell);
  }
}

void BasicsState::strike(std::size_t cell, std::size_t digit) {
  lose_candidate(cell, digit);
  const auto& spot = geometry_.spots[cell];
  for (std::size_t kind = 0; kind < 3; ++kind) lose_place(kind, spot.house[kind], spot.index[kind], digit);
}

void BasicsState::strike_places(std::size_t kind, std::size_t number, std::size_t digit, Mask cells) {
  for (; cells != 0; drop_lowest(cells)) strike(geometry_.cell_at[kind][number][lowest(cells)], digit);
}

void BasicsState::strike_digits(std::size_t cell, Mask digits) {
  for (; digits != 0; drop_lowest(digits)) strike(cell, lowest(digits));
}

// The digit is settled in the houses of `spot`; a peer there loses it, and so do the peer's other houses.
void BasicsState::strike_peer(std::size_t peer, std::size_t digit, const BasicsGeometry::Spot& spot) {
  if ((candidates_[peer] & bit(digit)) == 0) return;  // a peer in two common houses comes here twice
  lose_candidate(peer, digit);
  const auto& own = geometry_.spots[peer];
  for (std::size_t kind = 0; kind < 3; ++kind) {
    if (own.house[kind] == spot.house[kind]) {
      set(changed_houses_[kind], own.house[kind]);
    } else {
      lose_place(kind, own.house[kind], own.index[kind], digit);
    }
  }
}

void BasicsState::place(std::size_t cell, std::size_t digit) {
  const auto& spot = geometry_.spots[cell];
  placements_[static_cast<std::size_t>(placement_count_++)] = {Cell(static_cast<int>(cell)), Digit(static_cast<int>(digit))};
  Mask others = static_cast<Mask>(candidates_[cell] & ~bit(digit));
  candidates_[cell] = 0;
  set(changed_digits_, digit);
  for (; others != 0; drop_lowest(others)) {
    set(changed_digits_, lowest(others));
    for (std::size_t kind = 0; kind < 3; ++kind) lose_place(kind, spot.house[kind], spot.index[kind], lowest(others));
  }
  for (std::size_t kind = 0; kind < 3; ++kind) {
    const std::size_t number = spot.house[kind];
    Mask peers = static_cast<Mask>(std::exchange(places_[kind][number][digit], Mask{0}) & ~bit(spot.index[kind]));
    for (; peers != 0; drop_lowest(peers)) strike_peer(geometry_.cell_at[kind][number][lowest(peers)], digit, spot);
    open_[kind][number] = static_cast<Mask>(open_[kind][number] & ~bit(spot.index[kind]));
    set(changed_houses_[kind], number);
  }
}

bool BasicsState::settle() {
  while (!broken_) {
    if (single_count_ > 0) {
      const std::size_t cell = singles_[static_cast<std::size_t>(--single_count_)];
      if (candidates_[cell] != 0) place(cell, lowest(candidates_[cell]));
    } else if (lone_count_ > 0) {
      const Lone lone = lones_[static_cast<std::size_t>(--lone_count_)];
      const Mask places = places_[lone.kind][lone.number][lone.digit];
      if (places != 0) place(geometry_.cell_at[lone.kind][lone.number][lowest(places)], lone.digit);
    } else {
      return true;
    }
  }
  return false;
}

void BasicsState::write_to(Position& position) const {
  for (std::size_t i = 0; i < static_cast<std::size_t>(placement_count_); ++i) position.place(placements_[i].cell, placements_[i].digit);
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell) - DigitSet(candidates_[cell.index])) position.eliminate({cell, digit});
  }
}

}  // namespace cp::deduce
