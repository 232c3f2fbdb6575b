// SPDX-License-Identifier: Apache-2.0
// Cells, houses, digits and candidates as a person names them: "r3c7 and r3c9", "rows 1 and 2 and box 5",
// "one 5 and two 8s". Nothing here knows a technique.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "grid/position.h"
#include "step/balance_reason.h"

namespace cp {

// "r3c7", "r3c7 and r3c9", "r1c2, r1c4 and r7c2": every cell by name, row by row.
std::string cell_names(const Shape& shape, const CellSet& cells, std::string_view last_word = "and");
// The same while it is short; longer lists that fill the places of one house or start of a house are counted:
// "all five open cells of row 3", otherwise "11 cells". `open` are the open cells of the position.
std::string cells_in_short(const Shape& shape, const CellSet& cells, const CellSet& open, int longest_list = 6);

// "row 3", "rows 1, 2 and 3", "rows 3 and 7 with boxes 4 and 6". Rows first, then columns, then boxes.
std::string house_names(const Shape& shape, const std::vector<House>& houses);

// "5", "2 and 5", "2, 5 and 8".
std::string digit_names(DigitSet digits, std::string_view last_word = "and");
// The digit as a character, "5"; with article "a 5" or "an 8"; several "two 5s".
std::string digit_name(Digit digit);
std::string a_digit(Digit digit);
// How often each digit: "one 5 and two 8s"; `word` comes after the number: "one more 5 and two more 8s".
// Empty when every count is 0 (or below).
std::string copies_in_words(const DigitCounts& counts, const Shape& shape, std::string_view word = {});
// A multiset of digits in full, small to large: "1, 5, 5 and 8".
std::string digits_in_full(const DigitCounts& counts, const Shape& shape);

// "1 to 9": the digits of the shape.
std::string digit_range(const Shape& shape);

// What is struck out, grouped so that it is short: "5 leaves r1c2, r1c4 and r7c2", "2 and 5 leave r3c1; 7 leaves r4c1".
// No capital, no full stop. Precondition: not empty.
std::string eliminations_in_words(const Shape& shape, const std::vector<Candidate>& eliminations);
// What is placed: "r3c7 is 5", "r3c7 is 5 and r4c1 is 2".
std::string placements_in_words(const Shape& shape, const std::vector<Candidate>& placements);

}  // namespace cp
