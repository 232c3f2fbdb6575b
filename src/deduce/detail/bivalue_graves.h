// SPDX-License-Identifier: Apache-2.0
// Bivalue universal graves (BUG): every open cell has two candidates and each digit two places, or none, in every house. Then
// each cell could be given its other digit. A puzzle with one solution never comes to that, so where a few extra
// candidates stand in the way, one of them is true.
#pragma once

#include <string_view>
#include <vector>

#include "grid/position.h"
#include "step/step.h"

namespace cp::deduce {

// The cells with three candidates, when all other open cells have two. An empty set otherwise.
CellSet cells_with_three(const Position& position);

// Would each digit have two places or none in every house, were these candidates not there?
// The technique is named for its guard only: weakened, no house is looked at.
bool is_grave_without(std::string_view technique, const Position& position, const std::vector<Candidate>& extras);

// All open cells with their candidates, these aside.
DeadlyPattern grave_without(const Position& position, const std::vector<Candidate>& extras);

}  // namespace cp::deduce
