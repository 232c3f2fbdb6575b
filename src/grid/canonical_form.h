// SPDX-License-Identifier: Apache-2.0
// One puzzle for all that differ by clothes only (transform.h): the canonical form. Two puzzles have the same text exactly
// when a transform carries one into the other; nothing is hashed or sampled.
#pragma once

#include <cstdint>
#include <string>

#include "grid/transform.h"

namespace cp {

// How the canonical form is chosen among all images of the puzzle: first givens stand as early as possible (the board
// read row by row, a given before an empty cell), then the digits are as small as possible. So digits appear in the order
// 1, 2, 3 ..., and of full grids the form is the lexicographically first one. This order is stored with puzzles: frozen.
struct CanonicalForm {
  std::string text;            // one character a cell, '.' for empty; it parses as a puzzle
  Transform transform;         // carries the puzzle to the text; where several do, always the same one
  std::uint64_t symmetries;    // movements of the cells that carry the puzzle into itself, up to renaming; 1: none but staying
};

// 4x4, 6x6 and 9x9. (On 16x16 there are too many images for a puzzle with many symmetries of its pattern.)
[[nodiscard]] bool has_canonical_form(const Shape& shape);

// Of the digits placed, givens or not; candidates play no part, and neither does the number of solutions. On 9x9 usually
// some microseconds; a full grid takes milliseconds. Precondition: has_canonical_form(position.shape()).
[[nodiscard]] CanonicalForm canonical_form(const Position& position);

// The same from one digit a cell, row by row: 1 to the side, 0 for empty. For millions of puzzles.
[[nodiscard]] CanonicalForm canonical_form(const Shape& shape, const std::array<std::uint8_t, kMaxCells>& digits);

}  // namespace cp
