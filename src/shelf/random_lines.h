// SPDX-License-Identifier: Apache-2.0
// Random minimal puzzles as lines, as raw material and to try things out on.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

namespace cp {

// Line number `index` (from 0) of the endless list that belongs to a seed: a random minimal 9x9 puzzle
// (exact/random_grid.h says what "random" is worth). The same on every machine.
std::string random_line(std::uint64_t seed, std::uint64_t index);

// Gives the first `count` lines in order, made on several cores. `take` gives false to stop.
void random_lines(std::uint64_t seed, std::uint64_t count, int threads, const std::function<bool(const std::string& line)>& take);

}  // namespace cp
