// SPDX-License-Identifier: Apache-2.0
// A step in one or two sentences of plain English, made from its reason alone.
#pragma once

#include <string>
#include <string_view>

#include "step/step.h"

namespace cp {

// What the step says and why, e.g. "In box 4, 7 has only one place left: r5c2 is 7." `before` is the position in
// which the step was found. Sentences end with a full stop; candidates and cells are named as in naming.h.
std::string step_text(const Step& step, const Position& before);

// "hidden single" for "hidden-single": the catalogue's id as words.
std::string technique_words(std::string_view technique);

}  // namespace cp
