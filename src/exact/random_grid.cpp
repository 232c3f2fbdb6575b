// SPDX-License-Identifier: Apache-2.0
#include "exact/random_grid.h"

#include <vector>

#include "exact/detail/search.h"
#include "exact/minimal.h"

namespace cp {

namespace {

constexpr std::uint64_t kPuzzleStream = 0x70757A7A6C65;  // keeps the removal order apart from the grid's choices

}  // namespace

FullGrid random_grid(const Shape& shape, std::uint64_t seed) {
  Rng rng(seed);
  return detail::random_full_grid(shape, rng);
}

Position random_minimal_puzzle(const FullGrid& solution, std::uint64_t seed) {
  Rng rng(seed);
  std::vector<Cell> order;
  for (const Cell cell : solution.shape().all_cells()) order.push_back(cell);
  rng.shuffle(order);
  CellSet givens = solution.shape().all_cells();
  for (const Cell cell : order) {
    CellSet rest = givens;
    rest.remove(cell);
    // Proper without the cell means: nothing but the solution's digit can stand in it.
    Position without(solution.shape());
    for (const Cell given : rest) keep_only(without, {given, solution.at(given)});
    without.eliminate({cell, solution.at(cell)});
    if (count_solutions(without, 1).count == 0) givens = rest;
  }
  return solution.with_givens(givens);
}

Position random_minimal_puzzle(const Shape& shape, std::uint64_t seed) {
  return random_minimal_puzzle(random_grid(shape, seed), seed ^ kPuzzleStream);
}

}  // namespace cp
