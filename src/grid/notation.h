// SPDX-License-Identifier: Apache-2.0
// Puzzles and positions as text. The grammar with examples is docs/formats/position.md.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "grid/position.h"

namespace cp {

// Reads a puzzle or a position in any of the accepted forms; the shape follows from the number of cells.
// - one character a cell, row by row: digits (and A-G on 16x16), '.' '0' '_' for empty; white space, line breaks and
//   drawn rules ('|' '+' '-' ',' ';' and '=' lines) are passed over;
// - candidate grid: one word a cell, e.g. `1 25 379`: a single digit is a placed cell, several are candidates,
//   `(5)` is an open cell with one candidate left, `=5` a digit placed by the solver (not a given).
// Errors: kBadPuzzle with the place and what is wrong. A puzzle whose givens clash is read; has_clash() tells.
Result<Position> parse_position(std::string_view text);

// 81-character form (side*side): '.' for cells without a digit. Candidates are lost.
std::string to_line(const Position& position);
// Only the givens, same form.
std::string givens_line(const Position& position);
// Several lines with rules between the boxes, for people.
std::string to_grid_text(const Position& position);
// Candidate grid in columns, which parse_position reads back to an equal position.
std::string to_candidate_text(const Position& position);

// The digit a character stands for in this shape; empty optional when it stands for none.
std::optional<Digit> digit_from(char character, const Shape& shape);

}  // namespace cp
