// SPDX-License-Identifier: Apache-2.0
// The working state of run_basics: candidates as 16-bit masks, kept by cell and by house and digit, with lists of what
// changed, so that nothing is looked at twice without a reason. Made from a position, written back at the end.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "grid/position.h"

namespace cp::deduce {

// Where things are, worked out once for each shape.
struct BasicsGeometry {
  explicit BasicsGeometry(const Shape& shape);
  static const BasicsGeometry& of(const Shape& shape);

  struct Spot {
    std::array<std::uint8_t, 3> house{};  // number of the row, column, box
    std::array<std::uint8_t, 3> index{};  // place inside each, from 0 in reading order
  };
  int side = 0;
  int box_rows = 0;
  int box_columns = 0;
  std::array<Spot, kMaxCells> spots{};
  std::array<std::array<std::array<std::uint8_t, kMaxSide>, kMaxSide>, 3> cell_at{};  // kind, number, index
  // Kind of line (row, column), box, k-th line through it: the part of the box / of the line that they share.
  struct Overlap {
    std::uint8_t line = 0;
    std::uint16_t in_box = 0;
    std::uint16_t in_line = 0;
  };
  std::array<std::array<std::array<Overlap, kMaxSide>, kMaxSide>, 2> overlaps{};
};

class BasicsState {
 public:
  using Mask = std::uint16_t;
  enum Kind : std::size_t { kRow, kColumn, kBox };

  BasicsState(const Position& position, bool use_hidden_singles);

  // Naked (and hidden) singles until there are none. False on a contradiction.
  bool settle();
  // Everything found so far goes into the position this was made from.
  void write_to(Position& position) const;

  [[nodiscard]] const BasicsGeometry& geometry() const { return geometry_; }
  // Places of a digit in a house, by index inside the house; 0 once it is placed there.
  [[nodiscard]] Mask places(std::size_t kind, std::size_t number, std::size_t digit) const { return places_[kind][number][digit]; }
  // Candidates of an open cell; 0 for a placed one.
  [[nodiscard]] Mask candidates(std::size_t cell) const { return candidates_[cell]; }
  // Open cells of a house, by index inside it.
  [[nodiscard]] Mask open(std::size_t kind, std::size_t number) const { return open_[kind][number]; }

  // Strikes the digit from the cells of a house that the mask names (all of them can hold it).
  void strike_places(std::size_t kind, std::size_t number, std::size_t digit, Mask cells);
  // Strikes the digits from one cell (candidates of it, all of them).
  void strike_digits(std::size_t cell, Mask digits);

  // What changed since it was last cleared; the user clears what it has dealt with. Bit = number of house or digit.
  // For locked candidates: houses whose places for the digit changed.
  [[nodiscard]] Mask& changed_for_digit(std::size_t kind, std::size_t digit) { return changed_for_digit_[kind][digit]; }
  // For subsets: houses in which anything changed.
  [[nodiscard]] Mask& changed_houses(std::size_t kind) { return changed_houses_[kind]; }
  // For fish: digits that lost a place.
  [[nodiscard]] Mask& changed_digits() { return changed_digits_; }
  // True when a strike left singles to settle or broke the position.
  [[nodiscard]] bool is_unsettled() const { return broken_ || single_count_ > 0 || lone_count_ > 0; }

 private:
  struct Lone {
    std::uint8_t kind, number, digit;
  };
  void read_open_cell(Cell cell, Mask digits);
  void lose_place(std::size_t kind, std::size_t number, std::size_t index, std::size_t digit);
  void lose_candidate(std::size_t cell, std::size_t digit);
  void push_lone(std::size_t kind, std::size_t number, std::size_t digit);
  void strike(std::size_t cell, std::size_t digit);
  void strike_peer(std::size_t peer, std::size_t digit, const BasicsGeometry::Spot& spot);
  void place(std::size_t cell, std::size_t digit);

  const BasicsGeometry& geometry_;
  bool use_hidden_singles_;
  bool broken_ = false;
  int single_count_ = 0;
  int lone_count_ = 0;
  int placement_count_ = 0;
  std::array<Mask, kMaxCells> candidates_{};
  std::array<std::array<std::array<Mask, kMaxSide>, kMaxSide>, 3> places_{};
  std::array<std::array<Mask, kMaxSide>, 3> open_{};
  std::array<std::array<Mask, kMaxSide>, 3> changed_for_digit_{};
  std::array<Mask, 3> changed_houses_{};
  Mask changed_digits_ = 0;
  // Each cell becomes a single at most once, each digit gets alone in each house at most once: the lists cannot overflow.
  std::array<std::uint8_t, kMaxCells> singles_;
  std::array<Lone, 3 * kMaxSide * kMaxSide> lones_;
  std::array<Candidate, kMaxCells> placements_;
};

}  // namespace cp::deduce
