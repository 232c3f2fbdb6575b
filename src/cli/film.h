// SPDX-License-Identifier: Apache-2.0
// The lesson as a film of its stills, with chapters and captions, made by ffmpeg where that is installed.
#pragma once

#include <filesystem>
#include <optional>

#include "api/lesson_parts.h"
#include "base/result.h"
#include "cli/progress.h"

namespace cp::cli {

// Is ffmpeg installed?
bool has_film_maker();

// Writes an MP4 (H.264, 1920 by 1080, no sound) under this name. Works in a hidden folder beside it, which is gone afterwards.
std::optional<Error> write_film(const Document& document, const std::filesystem::path& goal, Progress& progress);

}  // namespace cp::cli
