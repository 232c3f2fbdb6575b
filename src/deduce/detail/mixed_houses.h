// SPDX-License-Identifier: Apache-2.0
// Fish without fins that use boxes, franken and mutant, as steps of the given technique.
#pragma once

#include <string_view>

#include "grid/position.h"
#include "step/step.h"

namespace cp::deduce {

enum class MixedKind {
  kFranken,  // bases are rows and boxes, covers columns and boxes, or the other way round; at least one box
  kMutant,   // lines of one direction on both sides, or of both directions on one side
};

// `size` houses (bases) that have two places or more for a digit each and share none of them; `size` other houses
// (covers) that hold all these places, while no fewer houses allowed as covers would do, and no single one holds all of a base. The
// digit leaves the covers' other cells, and the cells that are in two covers. On grids up to 9x9.
void find_mixed_fish(std::string_view technique, int size, MixedKind kind, const Position& position, StepSink& sink);

}  // namespace cp::deduce
