// SPDX-License-Identifier: Apache-2.0
#include "exact/minimal.h"

namespace cp {

namespace {

// In a proper puzzle a given is redundant exactly when, without it, its cell can hold nothing else.
// That search has to find no solution at all, which is cheaper than looking for two.
bool is_redundant(const Position& puzzle, Cell given) {
  Position without(puzzle.shape());
  for (const Cell other : puzzle.givens()) {
    if (other != given) keep_only(without, {other, *puzzle.digit_at(other)});
  }
  without.eliminate({given, *puzzle.digit_at(given)});
  return count_solutions(without, 1).count == 0;
}

}  // namespace

Position from_givens(const Position& puzzle, const CellSet& cells) {
  Position position(puzzle.shape());
  for (const Cell cell : puzzle.givens() & cells) position.place_given(cell, *puzzle.digit_at(cell));
  return position;
}

CellSet redundant_givens(const Position& puzzle) {
  CellSet redundant;
  if (!is_proper(from_givens(puzzle, puzzle.givens()))) return redundant;
  for (const Cell given : puzzle.givens()) {
    if (is_redundant(puzzle, given)) redundant.add(given);
  }
  return redundant;
}

bool is_minimal(const Position& puzzle) {
  if (!is_proper(from_givens(puzzle, puzzle.givens()))) return false;
  for (const Cell given : puzzle.givens()) {
    if (is_redundant(puzzle, given)) return false;
  }
  return true;
}

}  // namespace cp
