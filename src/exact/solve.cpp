// SPDX-License-Identifier: Apache-2.0
#include "exact/solve.h"

#include <algorithm>

#include "exact/detail/search.h"

namespace cp {

namespace detail {

SolutionCount search(const Position& position, SearchLimits limits, std::vector<FullGrid>* grids) {
  if (limits.solutions == 0) return {0, 0, SearchEnd::kSolutionLimit};
  if (limits.nodes == 0) return {0, 0, SearchEnd::kNodeLimit};
  const Shape& shape = position.shape();
  const bool is_nine = shape.box_rows() == 3 && shape.box_columns() == 3;
  return is_nine ? search_nine(position, limits, grids) : search_any_shape(position, limits, grids);
}

}  // namespace detail

SolutionList solutions(const Position& position, std::size_t limit, std::uint64_t node_limit) {
  SolutionList list;
  const SolutionCount found = detail::search(position, {limit, node_limit}, &list.grids);
  std::sort(list.grids.begin(), list.grids.end());
  list.nodes = found.nodes;
  list.end = found.end;
  return list;
}

SolutionCount count_solutions(const Position& position, std::uint64_t limit, std::uint64_t node_limit) {
  return detail::search(position, {limit, node_limit}, nullptr);
}

HowMany how_many(const Position& position) {
  switch (count_solutions(position, 2).count) {
    case 0: return HowMany::kNone;
    case 1: return HowMany::kOne;
    default: return HowMany::kMany;
  }
}

bool is_proper(const Position& position) { return how_many(position) == HowMany::kOne; }

void keep_only(Position& position, Candidate candidate) {
  for (const Digit other : position.candidates(candidate.cell)) {
    if (other != candidate.digit) position.eliminate({candidate.cell, other});
  }
}

std::optional<FullGrid> any_solution(const Position& position) {
  std::vector<FullGrid> grids;
  detail::search(position, {1, kNoLimit}, &grids);
  if (grids.empty()) return std::nullopt;
  return grids.front();
}

}  // namespace cp
