// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

bool has_locked_part(const Position& position, const std::set<Cell>& cells) {
  for (std::size_t size = 1; size < cells.size(); ++size) {
    for (const std::set<Cell>& part : choices(cells, size)) {
      if (digits_in(position, part).size() <= size) return true;
    }
  }
  return false;
}

std::set<PlainSet> plain_almost_locked_sets(const Position& position) {
  std::set<PlainSet> found;
  for (const House house : all_houses(position)) {
    for (std::size_t size = 1; size <= 4; ++size) {
      for (const std::set<Cell>& cells : choices(open_cells(position, house), size)) {
        const std::set<Digit> digits = digits_in(position, cells);
        if (digits.size() == size + 1 && !has_locked_part(position, cells)) found.insert({cells, digits});
      }
    }
  }
  return found;
}

std::set<Cell> holders(const Position& position, const std::set<Cell>& cells, Digit digit) {
  std::set<Cell> found;
  for (const Cell cell : cells) {
    if (position.candidates(cell).has(digit)) found.insert(cell);
  }
  return found;
}

bool sees(const Position& position, Cell one, Cell other) {
  const Shape& shape = position.shape();
  if (one == other) return false;
  return shape.row_of(one) == shape.row_of(other) || shape.column_of(one) == shape.column_of(other) || shape.box_of(one) == shape.box_of(other);
}

bool see_each_other(const Position& position, const std::set<Cell>& some, const std::set<Cell>& others) {
  for (const Cell one : some) {
    for (const Cell other : others) {
      if (!sees(position, one, other)) return false;
    }
  }
  return true;
}

bool are_in_one_house(const Position& position, const std::set<Cell>& cells) {
  for (const House house : all_houses(position)) {
    std::size_t inside = 0;
    for (const Cell cell : cells) inside += position.shape().cells(house).has(cell) ? 1 : 0;
    if (inside == cells.size()) return true;
  }
  return false;
}

std::set<Candidate> plain_seeing_all(const Position& position, const std::set<Cell>& cells, Digit digit) {
  std::set<Candidate> found;
  for (const Cell cell : position.open()) {
    if (position.has({cell, digit}) && see_each_other(position, {cell}, cells)) found.insert({cell, digit});
  }
  return found;
}

void note_new(Conclusions& conclusions, const std::set<Candidate>& struck) {
  if (!struck.empty() && !conclusions.contains({{}, struck})) conclusions.insert({{}, struck});
}

}  // namespace cp::oracle
