// SPDX-License-Identifier: Apache-2.0
// One scene as a still for a film: the board, the heading, the pans and the tally, a few words.
#pragma once

#include <cstddef>
#include <string>

#include "base/result.h"
#include "lesson/document.h"

namespace cp {

struct StillOptions {
  int height = 1080;            // of the picture; the width follows at 16 to 9
  bool is_transparent = false;  // only board and words are drawn, each on its own paper
};

inline constexpr int kLowestStill = 360;
inline constexpr int kHighestStill = 4320;

// The bytes of a PNG, eight bits a channel, with alpha where it is transparent. Never shows a solution or an answer.
// Errors: kBadArgument for a height outside the limits or a scene that is not there.
Result<std::string> still_png(const Document& document, std::size_t scene, const StillOptions& options = {});

}  // namespace cp
