// SPDX-License-Identifier: Apache-2.0
// What every command that makes the files of a lesson does: take the wishes, write the folder, end when it was stopped.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "api/json.h"
#include "cli/lesson_files.h"
#include "cli/lesson_folder.h"

namespace cp::cli {

struct LessonOutput {
  FileWishes wishes;
  bool keeps_others = false;    // some kinds only: files of the others stay
  bool as_json = false;         // how faults are told
  std::string whole = "lesson";  // what the same command finishes after a stop
};

// Fills in the wishes from the options as typed. Says what is wrong and gives the exit code when they cannot be met.
std::optional<int> read_output(const FileWords& words, bool has_notes, LessonOutput& output);

// Writes a folder as planned. Fills in the names of the files, below the folder. Says what went wrong and gives the exit code then;
// ends the program when a signal came.
std::optional<int> write_output(const std::string& folder, const FolderPlan& plan, const LessonOutput& output, std::vector<std::string>& names);

// The same for one lesson that has a document; `about` goes into lesson.json.
std::optional<int> write_lesson(const api::LessonParts& lesson, const std::string& folder, const LessonOutput& output, Json about, std::vector<std::string>& names);

}  // namespace cp::cli
