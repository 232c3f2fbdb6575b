// SPDX-License-Identifier: Apache-2.0
// Random full grids and random minimal puzzles, the same for a seed on every machine.
#pragma once

#include "base/rng.h"
#include "exact/full_grid.h"

namespace cp {

// A valid grid of the shape. How: the cells are filled one after the other, always one of those with the fewest digits
// left, chosen at random, with a random digit of those left; naked and hidden singles follow; a dead end goes back a step.
// Every grid can come out, but not every grid equally often: this is not a uniform sample, and statistics
// about "all grids" must not be drawn from it.
FullGrid random_grid(const Shape& shape, std::uint64_t seed);

// A minimal puzzle whose solution is `solution`: all cells are given, then each is taken away in random order when the
// puzzle stays proper without it. Not a uniform sample of minimal puzzles either: it favours those with more givens.
// Quick up to 9x9 (well under a millisecond); on 16x16 some tenths of a second, and now and then seconds.
Position random_minimal_puzzle(const FullGrid& solution, std::uint64_t seed);

// random_grid(shape, seed), then the above with a seed derived from it.
Position random_minimal_puzzle(const Shape& shape, std::uint64_t seed);

}  // namespace cp
