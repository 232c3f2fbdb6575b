// SPDX-License-Identifier: Apache-2.0
// Almost locked sets and seeing, in plain words, for the twins that need them.
#pragma once

#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

// Some open cells of a house, one digit more than cells.
struct PlainSet {
  std::set<Cell> cells;
  std::set<Digit> digits;

  friend auto operator<=>(const PlainSet&, const PlainSet&) = default;
};

// Do some of the cells, but not all, have no more digits than cells?
bool has_locked_part(const Position& position, const std::set<Cell>& cells);

// All almost locked sets of up to four cells without a locked part.
std::set<PlainSet> plain_almost_locked_sets(const Position& position);

// Of these cells, the ones that can hold the digit.
std::set<Cell> holders(const Position& position, const std::set<Cell>& cells, Digit digit);

// Do two different cells share a house? Does each cell of the one group see each of the other? Are they all in one house?
bool sees(const Position& position, Cell one, Cell other);
bool see_each_other(const Position& position, const std::set<Cell>& some, const std::set<Cell>& others);
bool are_in_one_house(const Position& position, const std::set<Cell>& cells);

// The candidates of the digit that see all of the cells.
std::set<Candidate> plain_seeing_all(const Position& position, const std::set<Cell>& cells, Digit digit);

// Notes what is struck out, unless it is nothing or noted already.
void note_new(Conclusions& conclusions, const std::set<Candidate>& struck);

}  // namespace cp::oracle
