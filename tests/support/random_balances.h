// SPDX-License-Identifier: Apache-2.0
// Random positions and random balances on them, for comparisons.
#pragma once

#include "balance/weighing.h"
#include "deduce/basics.h"
#include "exact/random_grid.h"
#include "support/random_states.h"

namespace cp::support {

// A minimal puzzle brought to the end of the basics; never complete. Tries seeds upwards from the one given.
inline Position stuck_position(const Shape& shape, std::uint64_t& seed) {
  while (true) {
    Position position = random_minimal_puzzle(shape, seed++);
    if (run_basics(position) && !position.is_complete()) return position;
  }
}

// Positions of many kinds that have at least one solution: fresh puzzles, after singles or all basics, with several
// solutions, with random sound eliminations.
inline Position sound_position(const Shape& shape, std::uint64_t seed) {
  Rng rng(seed * 77 + 5);
  const FullGrid solution = random_grid(shape, rng.next());
  Position position = loosened_puzzle(solution, rng, static_cast<int>(rng.below(3)), static_cast<int>(rng.below(12)));
  if (seed % 3 == 1) run_basics(position, {.locked = false, .subsets = false, .fish = false});
  if (seed % 3 == 2) run_basics(position);
  if (seed % 2 == 1) strike_at_random(position, rng, 40, &solution);
  return position;
}

// Rows or boxes against columns or boxes mostly, now and then any houses with weights from -2 to 2.
inline std::vector<Weight> random_weights(const Shape& shape, Rng& rng) {
  const auto side = static_cast<std::uint32_t>(shape.side());
  std::vector<Weight> weights;
  const std::uint32_t left = 1 + rng.below(4);
  const std::uint32_t right = 1 + rng.below(4);
  if (rng.below(8) == 0) {
    for (std::uint32_t i = 0; i < left + right; ++i) {
      weights.push_back({House(static_cast<int>(rng.below(3 * side))), static_cast<int>(rng.below(5)) - 2});
    }
    return weights;
  }
  const auto pick = [&](std::uint32_t count, std::uint32_t first_kind, std::uint32_t second_kind, int sign) {
    const std::uint32_t kind = rng.below(3) == 0 ? second_kind : first_kind;
    for (std::uint32_t i = 0; i < count; ++i) weights.push_back({House(static_cast<int>(kind * side + rng.below(side))), sign});
  };
  pick(left, 0, 2, 1);
  pick(right, 1, 2, -1);
  return weights;
}

}  // namespace cp::support
