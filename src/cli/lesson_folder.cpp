// SPDX-License-Identifier: Apache-2.0
#include "cli/lesson_folder.h"

#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <set>

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view kManifest = "lesson.json";
constexpr std::string_view kMadeBy = "counterpoise";
constexpr std::uintmax_t kLargestManifest = 1'000'000;

Error cannot_write(const fs::path& path, const std::string& why, std::string hint) {
  return Error{ErrorCode::kCannotWrite, "cannot write '" + path.string() + "': " + why, std::move(hint), {}};
}

// The files that an earlier lesson in this folder says it consists of; nothing when there was none.
std::set<std::string> files_of_earlier_lesson(const fs::path& folder) {
  std::set<std::string> names;
  std::error_code failed;
  const fs::path path = folder / kManifest;
  if (!fs::is_regular_file(path, failed) || fs::file_size(path, failed) > kLargestManifest) return names;
  std::ifstream file(path, std::ios::binary);
  const Json manifest = Json::parse(file, nullptr, false);
  if (!manifest.is_object() || manifest.value("made_by", Json()) != Json(kMadeBy)) return names;
  names.emplace(kManifest);
  const Json files = manifest.value("files", Json::array());
  for (const Json& name : files) {
    if (name.is_string()) names.insert(name.get<std::string>());
  }
  return names;
}

// The first thing in the folder that is no part of an earlier lesson. Hidden files belong to the desktop, not to people.
std::optional<std::string> foreign_file(const fs::path& folder, const std::set<std::string>& ours, std::error_code& failed) {
  std::set<std::string> foreign;
  for (fs::recursive_directory_iterator at(folder, failed), end; !failed && at != end; at.increment(failed)) {
    const std::string name = at->path().filename().string();
    const std::string relative = at->path().lexically_relative(folder).generic_string();
    if (name.starts_with('.')) {
      at.disable_recursion_pending();
    } else if (at->is_directory(failed) && relative == "figures") {
      continue;
    } else if (ours.count(relative) == 0) {
      foreign.insert(relative);
      at.disable_recursion_pending();
    }
  }
  if (foreign.empty()) return std::nullopt;
  return *foreign.begin();
}

std::optional<Error> prepare(const fs::path& folder, const std::set<std::string>& ours) {
  std::error_code failed;
  if (fs::exists(folder, failed) && !fs::is_directory(folder, failed)) {
    return cannot_write(folder, "there is a file of that name", "choose another name for the folder of the lesson");
  }
  if (fs::is_directory(folder, failed)) {
    const auto foreign = foreign_file(folder, ours, failed);
    if (failed) return cannot_write(folder, failed.message(), "check the permissions of the folder");
    if (foreign) {
      return cannot_write(folder, "the folder holds '" + *foreign + "', which is no part of a lesson", "choose an empty or a new folder; nothing was changed");
    }
  }
  fs::create_directories(folder / "figures", failed);
  if (failed) return cannot_write(folder, failed.message(), "choose a folder that you may write to");
  return std::nullopt;
}

// Writes beside the goal and renames, so that the goal is never half a file.
std::optional<Error> write_whole(const fs::path& goal, const std::string& text) {
  const fs::path partial = goal.parent_path() / ("." + goal.filename().string() + ".partial-" + std::to_string(::getpid()));
  std::error_code failed;
  errno = 0;
  {
    std::ofstream file(partial, std::ios::binary | std::ios::trunc);
    file.write(text.data(), static_cast<std::streamsize>(text.size()));
    file.close();
    if (!file) {
      const std::string why = errno == 0 ? "unknown reason" : std::strerror(errno);
      fs::remove(partial, failed);
      return cannot_write(goal, why, "check the permissions of the folder and the space on the disk");
    }
  }
  fs::rename(partial, goal, failed);
  if (!failed) return std::nullopt;
  const std::string why = failed.message();
  fs::remove(partial, failed);
  return cannot_write(goal, why, "check the permissions of the folder");
}

Json manifest_of(const Json& answer, const Json& names) {
  Json manifest = Json::object();
  manifest["made_by"] = kMadeBy;
  manifest["title"] = answer.at("title");
  manifest["steps"] = answer.at("steps");
  manifest["key"] = answer.at("key");
  manifest["files"] = names;
  return manifest;
}

}  // namespace

Result<Json> write_lesson(const std::string& folder_name, const Json& answer) {
  const fs::path folder(folder_name.empty() ? "." : folder_name);
  std::set<std::string> earlier = files_of_earlier_lesson(folder);
  if (auto failed = prepare(folder, earlier)) return std::move(*failed);
  Json names = Json::array();
  Json figures = Json::array();
  const Json* page = nullptr;
  for (const Json& file : answer.at("files")) {
    const std::string name = file.at("name").get<std::string>();
    names.push_back(name);
    earlier.erase(name);
    if (name == "index.html") {
      page = &file;
      continue;
    }
    figures.push_back((folder / name).string());
    if (auto failed = write_whole(folder / name, file.at("text").get<std::string>())) return std::move(*failed);
  }
  if (page == nullptr) return Error{ErrorCode::kBug, "the lesson has no page", "please report this puzzle", {}};
  const Json manifest = manifest_of(answer, names);
  if (auto failed = write_whole(folder / kManifest, manifest.dump(1) + "\n")) return std::move(*failed);
  if (auto failed = write_whole(folder / "index.html", page->at("text").get<std::string>())) return std::move(*failed);
  earlier.erase(std::string(kManifest));
  std::error_code ignored;
  for (const std::string& name : earlier) {
    // Only what lies inside: a manifest is a file that anyone can edit.
    if (name.find("..") == std::string::npos && fs::path(name).is_relative()) fs::remove(folder / name, ignored);
  }
  Json result = Json::object();
  result["page"] = (folder / "index.html").string();
  result["figures"] = std::move(figures);
  result["title"] = answer.at("title");
  result["key"] = answer.at("key");
  result["steps"] = answer.at("steps");
  result["solved"] = answer.at("solved");
  return result;
}

}  // namespace cp::cli
