// SPDX-License-Identifier: Apache-2.0
#include "cli/whole_file.h"

#include <unistd.h>

#include "cli/lesson_files.h"
#include "cli/stop_wish.h"

namespace cp::cli {

namespace fs = std::filesystem;

Error cannot_write(const fs::path& path, const std::string& why, std::string hint) {
  return Error{ErrorCode::kCannotWrite, "cannot write '" + path.string() + "': " + why, std::move(hint), {}};
}

std::optional<Error> write_whole(const fs::path& goal, const std::string& hint, const std::function<std::optional<Error>(const fs::path& partial)>& write) {
  const fs::path partial = goal.parent_path() / ("." + goal.filename().string() + std::string(kPartial) + std::to_string(::getpid()));
  std::error_code failed;
  if (auto wrong = write(partial)) {
    fs::remove(partial, failed);
    return wrong;
  }
  if (StopWish::signal() != 0) {
    fs::remove(partial, failed);
    return std::nullopt;
  }
  fs::rename(partial, goal, failed);
  if (!failed) return std::nullopt;
  const std::string why = failed.message();
  fs::remove(partial, failed);
  return cannot_write(goal, why, hint);
}

std::optional<Error> write_whole(const fs::path& goal, const std::string& hint, const std::string& bytes) {
  return write_whole(goal, hint, [&bytes](const fs::path& partial) { return write_bytes(partial, bytes); });
}

std::optional<Error> make_folder(const fs::path& folder) {
  std::error_code failed;
  fs::create_directories(folder, failed);
  if (!failed) return std::nullopt;
  return Error{ErrorCode::kCannotWrite, "cannot make '" + folder.string() + "': " + failed.message(), "choose a folder that you may write to", {}};
}

}  // namespace cp::cli
