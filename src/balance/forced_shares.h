// SPDX-License-Identifier: Apache-2.0
// Shares that are known beforehand: a digit that must fall into a pan more often than the tally asks is shared.
#pragma once

#include <vector>

#include "balance/weighing.h"

namespace cp {

struct ForcedShares {
  DigitCounts least{};               // shares[d] >= least[d]
  int total = 0;                     // sum of least
  std::vector<ForcedCopies> copies;  // a witness for every digit with least > 0, ordered by digit
};

// Looks for houses whose places for a digit all lie among the open cells of one pan (or of both together). Disjoint
// houses are taken from rows, from columns, from boxes, from the better of rows and boxes band by band, or of columns
// and boxes stack by stack. That choice of families is the limit of the search.
ForcedShares forced_shares(const Position& position, const Weighing& weighing);

}  // namespace cp
