// SPDX-License-Identifier: Apache-2.0
// The deductions inside a balance in words: forced shares, lemmas, cases. Used by balance_story.h.
#pragma once

#include <string>
#include <vector>

#include "speak/scales.h"

namespace cp {

// Shares that the forced copies prove: per digit the copies that both sides hold beyond the tally.
DigitCounts shares_known_beforehand(const BalanceReason& reason, const Scales& scales, const Position& position);

// "In row 3, 7 can only go into open left cells. So ..." Two or three sentences.
std::string forced_in_words(const ForcedCopies& forced, const Scales& scales, const Position& position);

// "a 4", "two 4s", "a 4 and a 7": the shares of a case beyond those known beforehand.
std::string supposed_in_words(const ShareCase& share_case, const DigitCounts& known, const Shape& shape);

// A sentence for each lemma, in order, as it reads when the lemmas before it have been carried out.
std::vector<std::string> lemmas_in_words(const ShareCase& share_case, const Scales& scales, const Position& position);

// The cells a case talks about, and all it removes.
CellSet cells_of_case(const ShareCase& share_case, const Scales& scales, const Position& position);
std::vector<Candidate> removed_in_case(const ShareCase& share_case);

// "one", "two" for the sum of the counts.
int sum_of(const DigitCounts& counts);

// Does the lemma strike out a cell because it would serve two of the houses at once?
bool wastes_a_house(const Lemma& lemma, const Shape& shape);

}  // namespace cp
