// SPDX-License-Identifier: Apache-2.0
// Rectangles of four cells in exactly two boxes, slowly: every choice of two rows and two columns is looked at.
#pragma once

#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

// The cells in two rows and two columns that lie in exactly two boxes, none of them a given.
std::set<std::set<Cell>> plain_rectangles(const Position& position);

// A rectangle of open cells that all have both digits.
struct PlainRectangle {
  std::set<Cell> corners;
  std::set<Digit> pair;
  std::set<Cell> rich;       // corners with other candidates too
  std::set<Digit> extras;    // those, together
};
std::vector<PlainRectangle> plain_pair_rectangles(const Position& position);

// Do all these cells lie in the house? Does the cell share a house with each of these, being none of them?
bool lies_in(const Position& position, const std::set<Cell>& cells, House house);
std::set<Cell> seeing_all(const Position& position, const std::set<Cell>& cells);

// Of the corners, the one that shares neither row nor column with this one.
Cell corner_across(const Position& position, const std::set<Cell>& corners, Cell corner);

// Notes what is struck out, unless it is empty or noted already.
void note_rectangle(Conclusions& conclusions, const std::set<Candidate>& struck);

}  // namespace cp::oracle
