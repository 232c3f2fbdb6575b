// SPDX-License-Identifier: Apache-2.0
// Level 5: everything a balance can prove, by exact search over the open cells of its remainders.
// The reference for levels 1-4. Sees the position, never the solution.
#pragma once

#include <cstdint>
#include <vector>

#include "balance/weighing.h"

namespace cp {

// A filling gives each open cell of the remainders one of its candidates such that
// - the tally holds: copies left minus copies right = tally, for every digit, with multiplicity;
// - no digit is twice in a house;
// - a house whose places for a digit all lie among these cells holds the digit there.
// A candidate falls when no filling goes with it: for a cell of the remainders, no filling has the digit there; for
// any other open cell, every filling has the digit in a cell that it sees.
struct Fillings {
  std::vector<Candidate> fallen;  // ordered
  bool is_impossible = false;     // there is no filling at all
  bool is_complete = true;        // false: the node limit was hit, so more may fall than is listed
  std::uint64_t nodes = 0;
};

// `node_limit` bounds all searches together, so that a nearly empty grid is answered within a breath.
Fillings all_fillings(const Position& position, const Weighing& weighing, std::uint64_t node_limit = 200'000);

}  // namespace cp
