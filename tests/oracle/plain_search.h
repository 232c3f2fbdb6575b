// SPDX-License-Identifier: Apache-2.0
// The definition of "fits the position", written down plainly: try every candidate of the smallest cell, strike it from
// the cells that see it, go on. Slow, and independent of src/exact.
#pragma once

#include <cstdint>
#include <vector>

#include "grid/position.h"

namespace cp::oracle {

// All grids that fit the position, at most `limit`, as digits in reading order; in no particular order.
std::vector<std::vector<Digit>> plain_solutions(const Position& position, std::size_t limit);

}  // namespace cp::oracle
