// SPDX-License-Identifier: Apache-2.0
// A lesson in a folder: index.html, figures/*.svg and lesson.json, which names them all.
#pragma once

#include <string>
#include <vector>

#include "api/json.h"
#include "base/result.h"

namespace cp::cli {

// Writes the files of a lesson answer (docs/formats/lesson.md). Each file appears under its name only when it is
// complete; the page comes last. A folder is used when it is new, empty or an earlier lesson, whose files are replaced;
// anything else in it is an error and nothing is written. Gives what --json prints: page, figures, key, steps.
Result<Json> write_lesson(const std::string& folder, const Json& answer);

}  // namespace cp::cli
