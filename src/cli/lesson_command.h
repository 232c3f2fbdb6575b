// SPDX-License-Identifier: Apache-2.0
// Making a lesson and saying where it is, for `lesson` and `demo`.
#pragma once

#include <string>

#include <CLI/CLI.hpp>

#include "api/commands.h"
#include "cli/command.h"
#include "cli/lesson_files.h"
#include "cli/report.h"

namespace cp::cli {

// Gives the exit code. `puzzle_name` is how messages call the puzzle; may be empty.
int make_lesson(const api::LessonRequest& request, const std::string& folder, bool as_json, const std::string& puzzle_name, const FileWords& files = {});

// Makes the series that comes along and says where it is. Gives the exit code.
int make_bundled_series(const std::string& folder, bool has_notes, bool as_json);

// What a message about a field of the request is about.
Source source_of(const api::LessonRequest& request, const std::string& field, const std::string& puzzle_name = "");

// --idea, --language, --title, --max-slack, --left and --right.
void add_request_options(CLI::App& command, api::LessonRequest& request);

// --only, --paper, --size and --transparent, for every command that makes files of a lesson.
void add_file_options(CLI::App& command, FileWords& words);

// The words draft, check and build after `lesson`.
void add_lesson_texts(CLI::App& lesson, Program& program);

// The text of a file that people write: a lesson, what a series says of itself.
Result<std::string> text_of_file(const std::string& name);

// Says what stopped a lesson, with its place in the file; gives the exit code.
int complain_of_lesson(const api::Answer& answer, const std::string& text, const std::string& file, bool as_json);

}  // namespace cp::cli
