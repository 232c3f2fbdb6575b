// SPDX-License-Identifier: Apache-2.0
#include "shelf/random_lines.h"

#include "exact/random_grid.h"
#include "grid/notation.h"
#include "shelf/in_parallel.h"

namespace cp {

namespace {

constexpr std::uint64_t kBlock = 2048;  // lines that are made before they are given

}  // namespace

std::string random_line(std::uint64_t seed, std::uint64_t index) { return givens_line(random_minimal_puzzle(standard_shape(), Rng(seed).next() + index)); }

void random_lines(std::uint64_t seed, std::uint64_t count, int threads, const std::function<bool(const std::string& line)>& take) {
  for (std::uint64_t from = 0; from < count; from += kBlock) {
    std::vector<std::string> lines(std::min(kBlock, count - from));
    in_parallel(lines.size(), threads, 16, [&](std::size_t at) { lines[at] = random_line(seed, from + at); });
    for (const std::string& line : lines) {
      if (!take(line)) return;
    }
  }
}

}  // namespace cp
