// SPDX-License-Identifier: Apache-2.0
// A position: a shape, the digits placed so far, and for every open cell the candidates left.
// Kept twice, by digit (places) and by cell (candidates); is_consistent() proves the two agree.
#pragma once

#include <array>
#include <optional>

#include "grid/shape.h"

namespace cp {

// A plain value: copy it to try something.
class Position {
 public:
  // The empty grid: nothing placed, every candidate present.
  explicit Position(const Shape& shape);

  [[nodiscard]] const Shape& shape() const { return *shape_; }

  // Puts a digit into a cell: the cell keeps only it, and its peers lose it.
  // Never fails; a clash shows as an empty cell or in has_clash().
  void place(Cell cell, Digit digit);
  // place(), and remembers the cell as one of the puzzle's givens.
  void place_given(Cell cell, Digit digit);
  // Strikes a candidate out; true if it was there. A cell left with one candidate is still open: placing it is a step.
  bool eliminate(Candidate candidate);

  // Cells with a digit placed (givens among them); cells without.
  [[nodiscard]] const CellSet& placed() const { return placed_; }
  [[nodiscard]] const CellSet& givens() const { return givens_; }
  [[nodiscard]] CellSet open() const { return shape_->all_cells() - placed_; }
  [[nodiscard]] bool is_placed(Cell cell) const { return placed_.has(cell); }
  // The digit placed in the cell, if any.
  [[nodiscard]] std::optional<Digit> digit_at(Cell cell) const;
  [[nodiscard]] bool is_complete() const { return placed_ == shape_->all_cells(); }

  // Candidates of a cell; a placed cell has exactly its digit.
  [[nodiscard]] DigitSet candidates(Cell cell) const { return candidates_[cell.index]; }
  [[nodiscard]] bool has(Candidate candidate) const { return candidates_[candidate.cell.index].has(candidate.digit); }
  // Open cells that can still hold the digit.
  [[nodiscard]] const CellSet& places(Digit digit) const { return places_[digit.index]; }
  // Open cells of the house that can still hold the digit.
  [[nodiscard]] CellSet places(House house, Digit digit) const { return places_[digit.index] & shape_->cells(house); }
  // Cells where the digit is placed.
  [[nodiscard]] CellSet placed(Digit digit) const;
  // True when the digit is placed somewhere in the house.
  [[nodiscard]] bool is_placed_in(House house, Digit digit) const;
  // Candidates of all cells together; a solved cell counts one (side*side when everything is placed).
  [[nodiscard]] int candidate_count() const;

  // True when the position shows its own impossibility: an open cell without candidates, a house without a place for
  // a digit, or a digit twice in a house.
  [[nodiscard]] bool has_clash() const;
  // Do the two representations agree? For asserts.
  [[nodiscard]] bool is_consistent() const;

  friend bool operator==(const Position& a, const Position& b);

 private:
  const Shape* shape_;
  CellSet placed_;
  CellSet givens_;
  std::array<CellSet, kMaxSide> places_{};
  std::array<DigitSet, kMaxCells> candidates_{};
};

}  // namespace cp
