// SPDX-License-Identifier: Apache-2.0
// Phrases about one balance that both the story and the short text use.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "speak/scales.h"

namespace cp {

// All that the words about a balance are made from. Refers to its arguments, which must outlive it.
struct Telling {
  const BalanceReason& reason;
  const Position& position;
  const std::vector<Candidate>& eliminations;
  const Shape& shape;
  Scales scales;
  DigitCounts forced;  // shares known beforehand
  int free_slack;      // slack beyond them
};

Telling telling(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations);

// Digits that a side's open cells hold for certain when `shares` copies are shared.
DigitCounts held(const Telling& t, Pan pan, const DigitCounts& shares);

// "one more of each digit from 1 to 9", for the surplus.
std::string surplus_words(const Telling& t);

// "the open left cells must hold one more 5 and two more 8s than the open right cells." With the full stop.
std::string tally_words(const Telling& t);

// What a side holds when something is still unknown: "5, 8 and the shared digit".
std::string certain_and_more(const Telling& t, const DigitCounts& certain, const std::string& more);

// "the open left cells hold exactly 5 and 8, and the open right cells exactly 2 and 7".
std::string exact_fit_words(const Telling& t, const DigitCounts& shares);

// "Twenty cells", to begin a sentence with: no figure stands there.
std::string counted_in_words(int number, std::string_view noun);

// "Three candidates fall: 5 leaves ...". With the full stop; `is_listed` false leaves the list out.
std::string falls_words(const Telling& t, bool is_listed);

}  // namespace cp
