// SPDX-License-Identifier: Apache-2.0
// The exactly-one facts that a grid is made of: a cell holds exactly one digit; a house holds a digit exactly once.
// Everything Counterpoise proves is built from them (324 on a 9x9 grid), and, for puzzles known to have one solution,
// from deadly patterns (argument_reason.h): at least one of their cells holds a digit outside the pattern.
#pragma once

#include <compare>
#include <cstdint>

#include "grid/shape.h"

namespace cp {

struct Constraint {
  enum class Kind : std::uint8_t { kCell, kHouse, kPattern };

  Kind kind = Kind::kCell;
  std::uint8_t place = 0;  // index of the cell, of the house, or in the list of patterns of the reason
  Digit digit;             // for kHouse only; digit 1 otherwise

  static constexpr Constraint of(Cell cell) { return {Kind::kCell, cell.index, Digit(0)}; }
  static constexpr Constraint of(House house, Digit digit) { return {Kind::kHouse, house.index, digit}; }

  static constexpr Constraint of_pattern(int number) { return {Kind::kPattern, static_cast<std::uint8_t>(number), Digit(0)}; }

  [[nodiscard]] constexpr Cell cell() const { return Cell(place); }      // precondition: kCell
  [[nodiscard]] constexpr House house() const { return House(place); }   // precondition: kHouse

  friend constexpr auto operator<=>(const Constraint&, const Constraint&) = default;
};

}  // namespace cp
