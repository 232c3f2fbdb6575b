// SPDX-License-Identifier: Apache-2.0
// Making a lesson and saying where it is, for `lesson` and `demo`.
#pragma once

#include <string>

#include <CLI/CLI.hpp>

#include "api/commands.h"
#include "cli/lesson_files.h"

namespace cp::cli {

// Gives the exit code. `puzzle_name` is how messages call the puzzle; may be empty.
int make_lesson(const api::LessonRequest& request, const std::string& folder, bool as_json, const std::string& puzzle_name, const FileWords& files = {});

// --only, --paper, --size and --transparent, for every command that makes files of a lesson.
void add_file_options(CLI::App& command, FileWords& words);

}  // namespace cp::cli
