// SPDX-License-Identifier: Apache-2.0
// Subsets of a house and fish of one size, as steps of the given technique. Used by the technique files.
#pragma once

#include <string_view>

#include "grid/position.h"
#include "step/step.h"

namespace cp::deduce {

// `size` open cells of a house whose candidates are `size` digits: these leave the rest of the house.
void find_naked_subsets(std::string_view technique, int size, const Position& position, StepSink& sink);

// `size` digits of a house whose places are `size` cells: all other digits leave these cells.
void find_hidden_subsets(std::string_view technique, int size, const Position& position, StepSink& sink);

// `size` parallel lines in which a digit has places only in `size` crossing lines: it leaves the rest of those.
void find_fish(std::string_view technique, int size, const Position& position, StepSink& sink);

}  // namespace cp::deduce
