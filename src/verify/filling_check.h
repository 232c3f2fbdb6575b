// SPDX-License-Identifier: Apache-2.0
// Level 5 judged again: a plain search for a filling that keeps a candidate. No filling: the candidate falls.
#pragma once

#include "verify/balance_check.h"

namespace cp {

// Looks for a filling of the open cells of the remainders that goes with the candidate (docs/formats/step.md).
// Gives up after `node_limit` nodes: then the elimination counts as not proved.
CheckResult check_no_filling(const Position& before, const Reweighed& reweighed, const Candidate& candidate,
                             std::uint64_t node_limit = 5'000'000);

}  // namespace cp
