// SPDX-License-Identifier: Apache-2.0
// Two balances with their reasons written out, for tests of words and pictures. Positions: published puzzles gecode14 and
// gecode5 of tests/data/puzzles.tsv after singles, locked candidates, subsets and basic fish.
#pragma once

#include <string_view>
#include <vector>

#include "step/step.h"

namespace cp::support {

struct SampleBalance {
  Position before;
  Step step;
};

// Columns 1, 3 and 8 against row 8 and box 4: surplus 1, slack 0, level 1, two eliminations.
SampleBalance exact_sample();

// Columns 1, 2, 3, 6, 7 and 9 against row 3 with boxes 4, 6 and 7: surplus 2, slack 4, three shares known beforehand,
// six cases of which three survive.
SampleBalance cases_sample();

// The ring theorem: columns 1, 2, 8 and 9 against rows 3 and 7 with boxes 4 and 6. No conclusion.
BalanceReason ring_reason();

// "c1 c3 -r8" as weights; "r4c2=5 r8c5=5" as candidates.
std::vector<Weight> weights_from(std::string_view text);
std::vector<Candidate> candidates_from(std::string_view text);

}  // namespace cp::support
