// SPDX-License-Identifier: Apache-2.0
#include "grid/position.h"

#include <cassert>

namespace cp {

Position::Position(const Shape& shape) : shape_(&shape) {
  for (const Digit digit : shape.digits()) places_[digit.index] = shape.all_cells();
  for (const Cell cell : shape.all_cells()) candidates_[cell.index] = shape.digits();
}

void Position::place(Cell cell, Digit digit) {
  for (const Digit other : shape_->digits()) places_[other.index].remove(cell);
  candidates_[cell.index] = DigitSet::of(digit);
  placed_.add(cell);
  for (const Cell peer : places_[digit.index] & shape_->peers(cell)) candidates_[peer.index].remove(digit);
  places_[digit.index] -= shape_->peers(cell);
  assert(is_consistent());
}

void Position::place_given(Cell cell, Digit digit) {
  place(cell, digit);
  givens_.add(cell);
}

bool Position::eliminate(Candidate candidate) {
  if (placed_.has(candidate.cell) || !has(candidate)) return false;
  candidates_[candidate.cell.index].remove(candidate.digit);
  places_[candidate.digit.index].remove(candidate.cell);
  return true;
}

std::optional<Digit> Position::digit_at(Cell cell) const {
  if (!placed_.has(cell)) return std::nullopt;
  return candidates_[cell.index].lowest();
}

CellSet Position::placed(Digit digit) const {
  CellSet cells;
  for (const Cell cell : placed_) {
    if (candidates_[cell.index].has(digit)) cells.add(cell);
  }
  return cells;
}

bool Position::is_placed_in(House house, Digit digit) const {
  for (const Cell cell : placed_ & shape_->cells(house)) {
    if (candidates_[cell.index].has(digit)) return true;
  }
  return false;
}

int Position::candidate_count() const {
  int total = 0;
  for (const Cell cell : shape_->all_cells()) total += candidates_[cell.index].size();
  return total;
}

bool Position::has_clash() const {
  for (const Cell cell : open()) {
    if (candidates_[cell.index].is_empty()) return true;
  }
  for (int i = 0; i < shape_->house_count(); ++i) {
    const House house(i);
    DigitSet seen;
    for (const Cell cell : placed_ & shape_->cells(house)) {
      if (!(seen & candidates_[cell.index]).is_empty()) return true;
      seen |= candidates_[cell.index];
    }
    for (const Digit digit : shape_->digits() - seen) {
      if (places(house, digit).is_empty()) return true;
    }
  }
  return false;
}

bool Position::is_consistent() const {
  for (const Cell cell : shape_->all_cells()) {
    for (const Digit digit : shape_->digits()) {
      const bool listed_by_digit = places_[digit.index].has(cell);
      const bool open_candidate = !placed_.has(cell) && candidates_[cell.index].has(digit);
      if (listed_by_digit != open_candidate) return false;
    }
    if (placed_.has(cell) && candidates_[cell.index].size() != 1) return false;
  }
  return givens_.is_subset_of(placed_);
}

bool operator==(const Position& a, const Position& b) {
  return a.shape_ == b.shape_ && a.placed_ == b.placed_ && a.givens_ == b.givens_ && a.places_ == b.places_ &&
         a.candidates_ == b.candidates_;
}

}  // namespace cp
