// SPDX-License-Identifier: Apache-2.0
// An argument as a person would say it: what is supposed, what then follows line by line, where it breaks.
#pragma once

#include <string>
#include <vector>

#include "grid/position.h"
#include "step/argument_reason.h"

namespace cp {

// Full sentences, ending with what is struck out. When several candidates are supposed in turn, the lines are told for
// the first of them; the others go the same way.
std::string argument_text(const ArgumentReason& reason, const std::vector<Candidate>& struck, const Position& before);

// "r3c4 = 5" as part of a sentence: "r3c4 is 5".
std::string supposition_in_words(const Shape& shape, const Candidate& candidate);

}  // namespace cp
