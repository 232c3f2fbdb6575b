// SPDX-License-Identifier: Apache-2.0
// The common face of the two search engines.
#pragma once

#include <vector>

#include "base/rng.h"
#include "exact/solve.h"

namespace cp::detail {

struct SearchLimits {
  std::uint64_t solutions = kNoLimit;
  std::uint64_t nodes = kNoLimit;
};

// Searches with the engine that suits the shape. Grids found are appended to `grids` in the order met, unless it is null.
SolutionCount search(const Position& position, SearchLimits limits, std::vector<FullGrid>* grids);

// For every shape.
SolutionCount search_any_shape(const Position& position, SearchLimits limits, std::vector<FullGrid>* grids);

// For shapes of 3x3 boxes only, much faster.
SolutionCount search_nine(const Position& position, SearchLimits limits, std::vector<FullGrid>* grids);

// A valid grid by random choices: a random one of the smallest cells, a random digit of it, and so on; a search that
// runs into trouble is started afresh.
FullGrid random_full_grid(const Shape& shape, Rng& rng);

}  // namespace cp::detail
