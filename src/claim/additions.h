// SPDX-License-Identifier: Apache-2.0
// What would close an open claim? The fewest facts to add to its footing, or one candidate to strike out.
#pragma once

#include "claim/verdict.h"

namespace cp {

// The facts that a footing gives on a position: houses, balances, earlier claims, marks.
std::vector<CertificateFact> facts_of(const Position& position, const Ground& ground);

struct Closing {
  std::vector<Addition> additions;    // the cheapest; at most kMostAdditions, equally cheap. Empty: nothing was found
  std::optional<Assignment> counter;  // breaks the claim, meets the footing, and as many other houses as a greedy choice gives
  std::uint64_t work = 0;
};

inline constexpr std::size_t kMostAdditions = 3;

// Precondition: the footing can go with the denial.
// `discussed`: the cells of the claim; a candidate there would be the claim again, so one elsewhere is better.
Closing close_claim(const Board& board, const Formula& denial, const CellSet& discussed, const std::vector<CertificateFact>& footing, const Ground& ground, const Spare& spare, const SearchLimits& limits);

}  // namespace cp
