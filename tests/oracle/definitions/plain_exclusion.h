// SPDX-License-Identifier: Apache-2.0
// Values that cells can not have together, for the twins of aligned pairs and triples.
#pragma once

#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

// Two candidates of cells that see each other can not both be true: equal digits, or an almost locked set loses two.
using Excluded = std::set<std::pair<Candidate, Candidate>>;
Excluded excluded_pairs(const Position& position);

// Does this candidate, by excluded pairs, leave another cell of its houses (of two candidates or more) nothing?
bool excludes_a_cell(const Position& position, const Excluded& excluded, Candidate candidate);

}  // namespace cp::oracle
