// SPDX-License-Identifier: Apache-2.0
// A lesson in a folder: its files (docs/formats/lesson_files.md) and lesson.json, which names them all. A series of lessons is
// the same with series.json and a folder for each lesson in it (docs/formats/series.md).
#pragma once

#include <string>
#include <vector>

#include "api/json.h"
#include "base/result.h"
#include "cli/lesson_files.h"

namespace cp::cli {

// The key of `about` for the digest of everything the files of a lesson are made from.
inline constexpr const char* kDigest = "digest";

// A lesson of a series: its folder below the folder of the series, and what its lesson.json says besides the names of its files.
struct FolderPart {
  std::string name;
  Json about;
};

// What goes into the folder.
struct FolderPlan {
  std::vector<FileJob> jobs;
  Json about;                      // goes into the manifest beside the names of the files; with kDigest for a lesson
  bool keeps_others = false;       // files of other kinds stay, if they were made from the same: `about` and the digests are equal
  std::vector<FolderPart> parts;   // not empty: a series; the names of its jobs begin with a part, except for its own page
};

struct WrittenFolder {
  std::vector<std::string> names;  // of the jobs, below the folder
  int signal = 0;                  // the signal that stopped the work; 0: everything is written
};

// Each file appears under its name only when it is complete. A folder is used when it is new, empty or an earlier lesson,
// whose files are replaced; anything else in it is an error and nothing is written. The manifest (lesson.json, series.json) is
// written first, with `unfinished`, so that a folder left by a crash can be used again, and last with the names of the files that are there. Shows progress on standard error; stops between two
// files, or within the film, on Ctrl-C.
Result<WrittenFolder> write_folder(const std::string& folder, const FolderPlan& plan);

}  // namespace cp::cli
