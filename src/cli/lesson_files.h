// SPDX-License-Identifier: Apache-2.0
// Which files a lesson becomes (docs/formats/lesson_files.md), and how each of them is made.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "api/lesson_parts.h"
#include "base/result.h"
#include "cli/progress.h"
#include "print/handout_pdf.h"

namespace cp::cli {

enum class FileKind { kPage, kFigures, kHandout, kStills, kCaptions, kChapters, kScript, kDescription, kVideo };

struct FileWishes {
  std::set<FileKind> kinds = {FileKind::kPage, FileKind::kFigures};
  Paper paper = Paper::kA4;
  int still_height = 1080;
  bool is_transparent = false;
  bool has_notes = false;  // on the page
};

// The words of the options --only, --paper, --size and --transparent as they were typed.
struct FileWords {
  std::string only;
  std::string paper = "a4";
  std::string size = "1080";
  bool is_transparent = false;
};

// The word of an option that means nothing.
struct WishFault {
  Error error;         // names the word and the choices; its place counts in `value`
  std::string option;  // "only", "paper", "size"
  std::string value;   // as typed
};

// Fills in the wishes; `usual` is meant when --only is empty.
std::optional<WishFault> read_wishes(const FileWords& words, const std::set<FileKind>& usual, FileWishes& wishes);

// The kind that a file of this name belongs to ("stills/scene-01-1080.png"); nothing for names that are not ours.
std::optional<FileKind> kind_of(const std::string& name);

// One file to be written.
struct FileJob {
  std::string name;  // below the folder of the lesson, with '/'
  // Writes the whole file under the name given; the caller renames it. May show progress.
  std::function<std::optional<Error>(const std::filesystem::path& partial, Progress& progress)> write;
};

// In the order they are written: after the page, which whoever sees it takes for the whole lesson, comes only the film, which
// takes longest. The document must outlive the jobs.
// `place`: where the lesson stands in a series.
std::vector<FileJob> file_jobs(const Document& document, const FileWishes& wishes, const api::LessonPlace& place = {});

// What would stop the jobs before they have begun, such as a program that is not installed.
std::optional<Error> missing_for(const FileWishes& wishes);

}  // namespace cp::cli
