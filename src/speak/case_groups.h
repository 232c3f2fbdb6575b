// SPDX-License-Identifier: Apache-2.0
// The cases of a balance, those with the same argument told together.
#pragma once

#include <string>
#include <vector>

#include "speak/balance_story.h"
#include "speak/telling.h"

namespace cp {

struct CaseGroup {
  std::vector<const ShareCase*> cases;  // at least one; small digits first
  std::vector<std::string> sentences;   // the argument they have in common

  [[nodiscard]] bool is_impossible() const { return cases.front()->is_impossible; }
};

// Every case in one group; groups in the order of their first case.
std::vector<CaseGroup> group_cases(const Telling& t);

// "the shared digit is a 4", "the other shared digit is a 1, a 4 or a 5", "the shared digits are a 4 and a 7".
std::string supposition(const Telling& t, const CaseGroup& group);

// "Suppose the shared digit is a 4. ..." with the argument and, where it breaks, the verdict.
std::string group_text(const Telling& t, const CaseGroup& group);

// What the surviving cases together say; empty when there is nothing to add to the list of what falls.
std::string verdict_of_cases(const Telling& t);

// The parts of the story for the cases of level 4.
void add_case_parts(const Telling& t, std::vector<StoryPart>& parts);

}  // namespace cp
