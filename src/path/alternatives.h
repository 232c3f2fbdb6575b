// SPDX-License-Identifier: Apache-2.0
// What else gives the same? Every step of the catalogue, and every balance, that proves one elimination.
#pragma once

#include <vector>

#include "path/path.h"

namespace cp {

struct AlternativesOptions {
  int most_free_slack = 1;
  std::size_t limit = 20;  // 0: all. Of balances that many are sought, in the order of the finder (load minus hint)
};

struct Alternatives {
  std::vector<PathStep> steps;  // cheapest first, ties by facts and the order of the catalogue; `open` is not filled in
  std::size_t found = 0;        // before the limit
};

// Steps at this position whose conclusions include that the candidate is false: it is struck out, or its cell or a peer
// gets a digit that excludes it. Precondition: the candidate is there, in an open cell.
Alternatives alternatives(const Position& position, Candidate target, const Selection& selection, const AlternativesOptions& options = {});

}  // namespace cp
