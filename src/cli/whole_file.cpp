// SPDX-License-Identifier: Apache-2.0
#include "cli/whole_file.h"

#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>

#include "cli/stop_wish.h"

namespace cp::cli {

namespace fs = std::filesystem;

namespace {

fs::path partial_of(const fs::path& goal) { return goal.parent_path() / ("." + goal.filename().string() + std::string(kPartial) + std::to_string(::getpid())); }

// Gives the written file its name, when it was written; nothing of it stays otherwise.
std::optional<Error> put_in_place(const fs::path& partial, const fs::path& goal, const std::string& hint, std::optional<Error> wrong) {
  std::error_code failed;
  if (!wrong) fs::rename(partial, goal, failed);
  if (failed) wrong = cannot_write(goal, failed.message(), hint);
  if (!wrong) return wrong;
  fs::remove(partial, failed);
  // The hidden name means nothing to the user.
  if (const auto at = wrong->message.find(partial.string()); at != std::string::npos) wrong->message.replace(at, partial.string().size(), goal.string());
  return wrong;
}

}  // namespace

Error cannot_write(const fs::path& path, const std::string& why, std::string hint) {
  return Error{ErrorCode::kCannotWrite, "cannot write '" + path.string() + "': " + why, std::move(hint), {}};
}

std::optional<Error> refuse_loss(const fs::path& path, bool replace) {
  std::error_code ignored;
  if (replace || !fs::exists(path, ignored)) return std::nullopt;
  return Error{ErrorCode::kCannotWrite, "there is a file '" + path.string() + "' already", "choose another name, or say --replace: what is in it would be lost", {}};
}

std::optional<Error> write_bytes(const fs::path& path, const std::string& bytes) {
  errno = 0;
  std::ofstream file(path, std::ios::binary | std::ios::trunc);
  file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  file.close();
  if (file) return std::nullopt;
  return cannot_write(path, errno == 0 ? "unknown reason" : std::strerror(errno), "check the permissions of the folder and the space on the disk");
}

std::optional<Error> write_whole(const fs::path& goal, const std::string& hint, const std::function<std::optional<Error>(const fs::path& partial)>& write) {
  const fs::path partial = partial_of(goal);
  auto wrong = write(partial);
  if (wrong || StopWish::signal() == 0) return put_in_place(partial, goal, hint, std::move(wrong));
  std::error_code ignored;
  fs::remove(partial, ignored);
  return std::nullopt;
}

std::optional<Error> write_whole(const fs::path& goal, const std::string& hint, const std::string& bytes) {
  const fs::path partial = partial_of(goal);
  return put_in_place(partial, goal, hint, write_bytes(partial, bytes));
}

std::optional<Error> make_folder(const fs::path& folder) {
  std::error_code failed;
  fs::create_directories(folder, failed);
  if (!failed) return std::nullopt;
  return Error{ErrorCode::kCannotWrite, "cannot make '" + folder.string() + "': " + failed.message(), "choose a folder that you may write to", {}};
}

}  // namespace cp::cli
