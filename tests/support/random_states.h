// SPDX-License-Identifier: Apache-2.0
// Random candidate states for comparisons: with no, one and many solutions, with sound and unsound eliminations.
#pragma once

#include <vector>

#include "base/rng.h"
#include "exact/random_grid.h"

namespace cp::support {

// Strikes out `count` random candidates of open cells; with `solution`, only ones the solution does not need.
inline void strike_at_random(Position& position, Rng& rng, int count, const FullGrid* solution) {
  for (int i = 0; i < count; ++i) {
    const Cell cell(static_cast<int>(rng.below(static_cast<std::uint32_t>(position.shape().cell_count()))));
    const Digit digit(static_cast<int>(rng.below(static_cast<std::uint32_t>(position.shape().side()))));
    if (solution != nullptr && solution->at(cell) == digit) continue;
    position.eliminate({cell, digit});
  }
}

// A minimal puzzle without `fewer` of its givens and with `more` further digits of its solution placed.
inline Position loosened_puzzle(const FullGrid& solution, Rng& rng, int fewer, int more) {
  const Position minimal = random_minimal_puzzle(solution, rng.next());
  CellSet givens = minimal.givens();
  for (int i = 0; i < fewer && !givens.is_empty(); ++i) {
    std::vector<Cell> left;
    for (const Cell cell : givens) left.push_back(cell);
    givens.remove(left[rng.below(static_cast<std::uint32_t>(left.size()))]);
  }
  Position position = solution.with_givens(givens);
  for (int i = 0; i < more; ++i) {
    const Cell cell(static_cast<int>(rng.below(static_cast<std::uint32_t>(solution.shape().cell_count()))));
    if (!position.is_placed(cell)) position.place(cell, solution.at(cell));
  }
  return position;
}

// No digit placed: the candidates are those of a few grids together, and a little noise.
inline Position overlaid_grids(const Shape& shape, Rng& rng, int grids, int noise) {
  Position position(shape);
  std::vector<FullGrid> layers;
  for (int i = 0; i < grids; ++i) layers.push_back(random_grid(shape, rng.next()));
  for (const Cell cell : shape.all_cells()) {
    DigitSet kept;
    for (const FullGrid& layer : layers) kept.add(layer.at(cell));
    if (rng.below(100) < static_cast<std::uint32_t>(noise)) kept = shape.digits();
    for (const Digit digit : shape.digits() - kept) position.eliminate({cell, digit});
  }
  return position;
}

// A different state for every seed; about a fifth have no solution, a third have one, the rest have several.
inline Position random_state(const Shape& shape, std::uint64_t seed) {
  Rng rng(seed * 0x10001 + 17);
  const FullGrid solution = random_grid(shape, rng.next());
  switch (seed % 6) {
    case 0: {  // sound eliminations from a proper puzzle
      Position position = loosened_puzzle(solution, rng, 0, static_cast<int>(rng.below(6)));
      strike_at_random(position, rng, 60, &solution);
      return position;
    }
    case 1: return loosened_puzzle(solution, rng, 1 + static_cast<int>(rng.below(3)), 0);
    case 2: {  // several solutions, some of them struck out
      Position position = loosened_puzzle(solution, rng, 2, 2);
      strike_at_random(position, rng, 20, &solution);
      return position;
    }
    case 3: {  // the solution itself is struck out
      Position position = loosened_puzzle(solution, rng, static_cast<int>(rng.below(3)), 4);
      strike_at_random(position, rng, 25, nullptr);
      return position;
    }
    case 4: return overlaid_grids(shape, rng, 3, 25);
    default: {  // a clash is possible: a wrong digit is placed
      Position position = loosened_puzzle(solution, rng, 1, 3);
      const auto open = position.open();
      if (!open.is_empty()) position.place(open.first(), Digit(static_cast<int>(rng.below(static_cast<std::uint32_t>(shape.side())))));
      return position;
    }
  }
}

}  // namespace cp::support
