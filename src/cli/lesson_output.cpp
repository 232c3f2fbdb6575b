// SPDX-License-Identifier: Apache-2.0
#include "cli/lesson_output.h"

#include "base/sha256.h"
#include "cli/page_engine.h"
#include "cli/report.h"
#include "cli/stop_wish.h"

namespace cp::cli {

std::optional<int> read_output(const FileWords& words, bool has_notes, LessonOutput& output) {
  if (const auto fault = read_wishes(words, {FileKind::kPage, FileKind::kFigures}, output.wishes)) {
    return fail(fault->error, output.as_json, {fault->value, "--" + fault->option}, fault->option);
  }
  output.wishes.has_notes = has_notes;
  output.keeps_others = !words.only.empty();
  if (auto missing = missing_for(output.wishes)) return fail(*missing, output.as_json);
  if (output.wishes.kinds.count(FileKind::kPage) != 0 && page_engine().empty()) {
    complain(Error{ErrorCode::kNotFound, "the engine for pages was not found: pupils can read and step through the page, but try nothing on it",
                   "./run desk builds the engine, once; then make the page again", {}});
  }
  return std::nullopt;
}

std::optional<int> write_output(const std::string& folder, const FolderPlan& plan, const LessonOutput& output, std::vector<std::string>& names) {
  auto written = write_folder(folder, plan);
  if (!written) return fail(written.error(), output.as_json);
  if (written->signal != 0) {
    complain(Error{ErrorCode::kLimit, "stopped", "the files that were complete stay; the same command finishes the " + output.whole, {}});
    end_by(written->signal);
  }
  names = std::move(written).value().names;
  return std::nullopt;
}

std::optional<int> write_lesson(const api::LessonParts& lesson, const std::string& folder, const LessonOutput& output, Json about, std::vector<std::string>& names) {
  about[kDigest] = sha256_base64(lesson.text);
  return write_output(folder, {file_jobs(*lesson.document, output.wishes), std::move(about), output.keeps_others, {}}, output, names);
}

}  // namespace cp::cli
