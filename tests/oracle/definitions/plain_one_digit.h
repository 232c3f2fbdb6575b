// SPDX-License-Identifier: Apache-2.0
// Plain words for chains and colours of one digit, shared by the twins of these techniques.
#pragma once

#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

// Notes it unless the same candidates have been struck out before.
void note_once(Conclusions& conclusions, const std::set<Candidate>& struck);

// Do two cells share a house, without being the same?
bool see_each_other(const Position& position, Cell one, Cell other);

// Every open place of the digit in the grid.
std::set<Cell> places_in_grid(const Position& position, Digit digit);

// The places other than this one with which it shares a house that has no third place.
std::set<Cell> partners(const Position& position, Digit digit, Cell place);

// The candidates of the digit that see both cells.
std::set<Candidate> seen_from_both(const Position& position, Digit digit, Cell one, Cell other);

}  // namespace cp::oracle
