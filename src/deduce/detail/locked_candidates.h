// SPDX-License-Identifier: Apache-2.0
// Locked candidates, both ways: all places of a digit in one house lie in another house too.
#pragma once

#include <string_view>

#include "grid/position.h"
#include "step/step.h"

namespace cp::deduce {

// If the digit has at least two places in `base` and all of them lie in `cover`, reports that it leaves the rest of
// `cover`. False when the sink asked to stop. A lone place is a hidden single and not reported here.
bool report_locked(std::string_view technique, const Position& position, House base, House cover, Digit digit, StepSink& sink);

}  // namespace cp::deduce
