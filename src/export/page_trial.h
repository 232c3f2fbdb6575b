// SPDX-License-Identifier: Apache-2.0
// What the engine inside a page needs to know of the scenes: the position on each board and what falls there.
#pragma once

#include <string>

#include "lesson/document.h"

namespace cp {

// JSON, safe inside a <script> element: {"language":"en","side":9,"scenes":{"scene-3":{"position":"...","out":["r1c2=5"],"in":[]}}}.
// Scenes without a board, or whose board is full, are left out.
std::string page_trial_json(const Document& document);

}  // namespace cp
