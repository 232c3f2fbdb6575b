// SPDX-License-Identifier: Apache-2.0
// Fish of lines with fins in one box, finned and sashimi, as steps of the given technique.
#pragma once

#include <string_view>

#include "grid/position.h"
#include "step/step.h"

namespace cp::deduce {

enum class FinKind {
  kFinned,   // without its fins a whole fish is left: each base and each cover line keeps two places or more
  kSashimi,  // a base or a cover line keeps only one
};

// `size` parallel lines (bases), each with two places or more for a digit, and `size` crossing lines (covers), where each base has a
// place in some cover and each cover in some base; the places of the bases outside the covers (fins) are some, all in
// one box. The digit leaves the cells of the covers in that box, the bases' own apart.
void find_finned_fish(std::string_view technique, int size, FinKind kind, const Position& position, StepSink& sink);

}  // namespace cp::deduce
