// SPDX-License-Identifier: Apache-2.0
// What is true? Exact search for the grids that fit a position. The position is taken as it stands, candidates struck
// out included: a grid counts only when each of its digits is still a candidate. All functions are pure and
// deterministic: same position, same answer, same node count on every machine.
#pragma once

#include <cstdint>
#include <vector>

#include "exact/full_grid.h"

namespace cp {

inline constexpr std::uint64_t kNoLimit = std::uint64_t{1} << 63;

// How a search ended.
enum class SearchEnd {
  kComplete,       // the whole space was looked at: nothing was missed
  kSolutionLimit,  // as many solutions as asked for were found; there may be more
  kNodeLimit,      // the limit on nodes was reached first; there may be more
};

// Nodes are positions of the search tree brought to the end of simple propagation; the start is the first node.
// They measure work, and belong to the engine: they change when the engine changes, never from run to run.
struct SolutionList {
  std::vector<FullGrid> grids;  // in the order of FullGrid
  std::uint64_t nodes = 0;
  SearchEnd end = SearchEnd::kComplete;
};

struct SolutionCount {
  std::uint64_t count = 0;
  std::uint64_t nodes = 0;
  SearchEnd end = SearchEnd::kComplete;
};

enum class HowMany { kNone, kOne, kMany };

// Up to `limit` grids that fit the position, sorted. When the end is kComplete these are all of them; otherwise they
// are the first ones the search meets, a fixed choice but not the first in sorted order.
SolutionList solutions(const Position& position, std::size_t limit, std::uint64_t node_limit = kNoLimit);

// Counts up to `limit` grids without keeping them.
SolutionCount count_solutions(const Position& position, std::uint64_t limit, std::uint64_t node_limit = kNoLimit);

// None, one, or many.
HowMany how_many(const Position& position);

// Exactly one solution?
bool is_proper(const Position& position);

// Strikes every other digit out of an open cell. To a search this is the same as placing the digit, and it costs less.
void keep_only(Position& position, Candidate candidate);

// One grid that fits, if any: the first the search meets.
std::optional<FullGrid> any_solution(const Position& position);

}  // namespace cp
