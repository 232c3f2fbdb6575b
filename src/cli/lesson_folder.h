// SPDX-License-Identifier: Apache-2.0
// A lesson in a folder: its files (docs/formats/lesson_files.md) and lesson.json, which names them all.
#pragma once

#include <string>
#include <vector>

#include "api/json.h"
#include "base/result.h"
#include "cli/lesson_files.h"

namespace cp::cli {

// What goes into the folder.
struct FolderPlan {
  std::vector<FileJob> jobs;
  Json about;                // goes into lesson.json beside the names of the files
  bool keeps_others = false; // files of other kinds stay, if they were made from the same (`about` is equal)
};

struct WrittenFolder {
  std::vector<std::string> names;  // of the jobs, below the folder
  int signal = 0;                  // the signal that stopped the work; 0: everything is written
};

// Each file appears under its name only when it is complete. A folder is used when it is new, empty or an earlier lesson,
// whose files are replaced; anything else in it is an error and nothing is written. lesson.json is written first, with
// `unfinished`, so that a folder left by a crash can be used again. Shows progress on standard error; stops between two
// files, or within the film, on Ctrl-C.
Result<WrittenFolder> write_folder(const std::string& folder, const FolderPlan& plan);

}  // namespace cp::cli
