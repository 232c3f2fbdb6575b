// SPDX-License-Identifier: Apache-2.0
// Which values cells of one house can not have together, because an almost locked set would lose two of its digits to
// them. Shared by aligned pairs and triples.
#pragma once

#include <string_view>

#include "grid/position.h"
#include "step/step.h"

namespace cp::deduce {

// A value of one cell that leaves another cell of the same house no value.
void find_aligned_pairs(std::string_view technique, const Position& position, StepSink& sink);

// A value of one cell that leaves two others, the three in one house, no two values together.
void find_aligned_triples(std::string_view technique, const Position& position, StepSink& sink);

}  // namespace cp::deduce
