// SPDX-License-Identifier: Apache-2.0
#include "exact/grid_count.h"

#include "exact/solve.h"

namespace cp {

namespace {

constexpr int kLargestSide = 6;                       // 8x8 has over 10^11 grids with a fixed first row already
constexpr std::uint64_t kNodeLimit = 20'000'000;      // a second or two; 6x6 needs well under a million

Error too_many(const Shape& shape) {
  return Error{ErrorCode::kLimit, "there are too many " + std::string(shape.name()) + " grids to count one by one",
               "count the solutions of a puzzle with more digits given, or a smaller shape", {}};
}

}  // namespace

Result<std::uint64_t> count_grids(const Shape& shape) {
  if (shape.side() > kLargestSide) return too_many(shape);
  Position start(shape);
  std::uint64_t namings = 1;
  for (int column = 0; column < shape.side(); ++column) {
    start.place_given(shape.cell_at(0, column), Digit(column));
    namings *= static_cast<std::uint64_t>(column) + 1;
  }
  const SolutionCount found = count_solutions(start, kNoLimit, kNodeLimit);
  if (found.end != SearchEnd::kComplete) return too_many(shape);
  return found.count * namings;
}

}  // namespace cp
