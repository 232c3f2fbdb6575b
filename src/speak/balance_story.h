// SPDX-License-Identifier: Apache-2.0
// The argument of a balance, told part by part for an audience that has never seen one. Each part carries the words
// and what a picture should point at. The one-paragraph version is made from the same pieces.
#pragma once

#include <string>
#include <vector>

#include "grid/position.h"
#include "speak/paragraph.h"
#include "step/balance_reason.h"

namespace cp {

struct StoryPart {
  enum class Kind {
    kHouses,  // which houses lie in which pan
    kCancel,  // what cancels, what remains
    kKnown,   // the digits that can be read on both sides already
    kTally,   // the account, digit by digit
    kSlack,   // what fills the open cells; how many are left over
    kForced,  // shares that are known beforehand
    kCase,    // one deduction, or one case with its deductions
    kFalls,   // what is struck out in the end
  };
  Kind kind = Kind::kHouses;
  std::string heading;               // a few words, no full stop
  std::vector<Paragraph> paragraphs;
  CellSet focus;                     // cells the words point at
  std::vector<House> houses;         // houses the words point at
  std::vector<Candidate> removed;    // candidates that fall in this part (inside its case)
  DigitCounts shares{};              // shared copies known or supposed in this part
  bool shares_are_supposed = false;  // true inside a case
};

// Precondition: the reason belongs to this position; `eliminations` are those of the step.
std::vector<StoryPart> balance_story(const BalanceReason& reason, const Position& position,
                                     const std::vector<Candidate>& eliminations);

// The whole argument in one paragraph, for lists and terminals.
std::string balance_text(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations);

// One or two sentences: the houses, what the open cells must hold, what falls.
std::string balance_in_short(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations);

// "Weigh rows 1 and 2 against columns 3 and 4".
std::string balance_headline(const BalanceReason& reason, const Shape& shape);

}  // namespace cp
