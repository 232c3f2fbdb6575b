// SPDX-License-Identifier: Apache-2.0
// How many full grids does a shape have?
#pragma once

#include <cstdint>

#include "base/result.h"
#include "grid/shape.h"

namespace cp {

// Counts one by one the grids whose first row reads 1 2 3 ..., and multiplies by the side! ways of naming the digits:
// relabelling turns each grid into exactly one with that first row. Error kLimit for shapes too large for that.
Result<std::uint64_t> count_grids(const Shape& shape);

}  // namespace cp
