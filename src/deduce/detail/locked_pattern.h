// SPDX-License-Identifier: Apache-2.0
// Patterns over several houses that need every digit they have: as many digits as cells, where the cells of each digit
// lie in one house, so no digit fits twice. Every digit then is in its cells of the pattern, and falls wherever it sees all of them.
#pragma once

#include <string_view>
#include <vector>

#include "grid/position.h"
#include "step/step.h"

namespace cp::deduce {

// One digit of the pattern and its cells there, all in one house.
struct Need {
  Digit digit;
  CellSet cells;
};

// The step for a pattern of these cells (given once for each part of the pattern they are in) and as many needs. Has no
// eliminations when there are none, or when the cells of a need lie in no house.
Step locked_pattern_step(std::string_view technique, const Position& position, const std::vector<Cell>& cells, const std::vector<Need>& needs);

}  // namespace cp::deduce
