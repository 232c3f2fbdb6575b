// SPDX-License-Identifier: Apache-2.0
// Weighed exactly-one facts in one or two sentences: locked candidates, subsets, fish, and sums of any kind.
#pragma once

#include <string>
#include <vector>

#include "grid/position.h"
#include "step/linear_reason.h"

namespace cp {

// Why the sum strikes these candidates out at this position. Full stop at the end.
std::string linear_text(const LinearReason& reason, const std::vector<Candidate>& struck, const Position& before);

// Why the sum is impossible at this position: more is needed than there is room for. No capital, no full stop.
std::string impossible_text(const LinearReason& reason, const Position& before);

}  // namespace cp
