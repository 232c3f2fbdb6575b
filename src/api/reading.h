// SPDX-License-Identifier: Apache-2.0
// For shells that have to tell puzzles from other text.
#pragma once

#include <string_view>

#include "base/result.h"

namespace cp::api {

// Can the text be read as a puzzle or a position (docs/formats/position.md)? Proper or not plays no part.
bool is_puzzle(std::string_view text);

// What is wrong with a text that is no puzzle.
Result<bool> try_puzzle(std::string_view text);

}  // namespace cp::api
