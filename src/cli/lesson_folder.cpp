// SPDX-License-Identifier: Apache-2.0
#include "cli/lesson_folder.h"

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>

#include "cli/stop_wish.h"
#include "cli/whole_file.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view kManifest = "lesson.json";
constexpr std::string_view kMadeBy = "counterpoise";
constexpr std::uintmax_t kLargestManifest = 1'000'000;

// lesson.json of an earlier lesson in this folder; null when there was none.
Json earlier_manifest(const fs::path& folder) {
  std::error_code failed;
  const fs::path path = folder / kManifest;
  if (!fs::is_regular_file(path, failed) || fs::file_size(path, failed) > kLargestManifest) return {};
  std::ifstream file(path, std::ios::binary);
  Json manifest = Json::parse(file, nullptr, false);
  if (!manifest.is_object() || manifest.value("made_by", Json()) != Json(kMadeBy)) return {};
  return manifest;
}

// The files it says the lesson consists of.
std::set<std::string> files_of(const Json& manifest) {
  std::set<std::string> names;
  if (!manifest.is_object()) return names;
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
    } else if (at->is_directory(failed) && (relative == "figures" || relative == "stills")) {
      continue;
    } else if (ours.count(relative) == 0) {
      foreign.insert(relative);
      at.disable_recursion_pending();
    }
  }
  if (foreign.empty()) return std::nullopt;
  return *foreign.begin();
}

// A hidden file that another run was writing when it was killed: ".page.html.partial-4711", and no such process lives.
bool is_left_over(const std::string& name) {
  const auto at = name.rfind(kPartial);
  if (!name.starts_with('.') || at == std::string::npos) return false;
  const long process = std::atol(name.c_str() + at + kPartial.size());
  return process > 0 && ::kill(static_cast<pid_t>(process), 0) != 0 && errno == ESRCH;
}

void remove_left_overs(const fs::path& folder) {
  std::error_code failed;
  for (const fs::path& place : {folder, folder / "figures", folder / "stills"}) {
    std::vector<fs::path> old;
    for (fs::directory_iterator at(place, failed), end; !failed && at != end; at.increment(failed)) {
      if (is_left_over(at->path().filename().string())) old.push_back(at->path());
    }
    for (const fs::path& path : old) fs::remove_all(path, failed);
  }
}

std::optional<Error> prepare(const fs::path& folder, const std::set<std::string>& ours, const std::vector<FileJob>& jobs) {
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
  fs::create_directories(folder, failed);
  for (const FileJob& job : jobs) {
    if (!failed) fs::create_directories((folder / job.name).parent_path(), failed);
  }
  if (failed) return cannot_write(folder, failed.message(), "choose a folder that you may write to");
  remove_left_overs(folder);
  return std::nullopt;
}

constexpr const char* kPermissions = "check the permissions of the folder";

std::optional<Error> write_manifest(const fs::path& folder, const Json& about, const std::set<std::string>& names, bool is_finished) {
  Json manifest = Json::object();
  manifest["made_by"] = kMadeBy;
  manifest.update(about);
  manifest["files"] = Json::array();
  for (const std::string& name : names) {
    if (name != kManifest) manifest["files"].push_back(name);
  }
  if (!is_finished) manifest["unfinished"] = true;
  const std::string text = manifest.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
  return write_whole(folder / kManifest, kPermissions, text);
}

bool is_about_the_same(const Json& manifest, const Json& about) {
  if (!manifest.is_object()) return false;
  for (const auto& entry : about.items()) {
    if (manifest.value(entry.key(), Json()) != entry.value()) return false;
  }
  return true;
}

// Those of the earlier files that stay: of a kind that is not written now.
std::set<std::string> kept_files(const std::set<std::string>& earlier, const std::vector<FileJob>& jobs) {
  std::set<std::string> kept;
  for (const std::string& name : earlier) {
    const auto kind = kind_of(name);
    const bool is_made_now = std::any_of(jobs.begin(), jobs.end(), [&kind](const FileJob& job) { return kind_of(job.name) == kind; });
    if (kind && !is_made_now) kept.insert(name);
  }
  return kept;
}

}  // namespace

Result<WrittenFolder> write_folder(const std::string& folder_name, const FolderPlan& plan) {
  const fs::path folder(folder_name.empty() ? "." : folder_name);
  const Json before = earlier_manifest(folder);
  const std::set<std::string> earlier = files_of(before);
  if (auto failed = prepare(folder, earlier, plan.jobs)) return std::move(*failed);
  std::set<std::string> names;
  if (plan.keeps_others && is_about_the_same(before, plan.about)) names = kept_files(earlier, plan.jobs);
  WrittenFolder written;
  for (const FileJob& job : plan.jobs) {
    names.insert(job.name);
    written.names.push_back(job.name);
  }
  std::set<std::string> possible = names;
  possible.insert(earlier.begin(), earlier.end());
  const StopWish stop_wish;
  Progress progress;
  if (auto failed = write_manifest(folder, plan.about, possible, false)) return std::move(*failed);
  for (std::size_t i = 0; i < plan.jobs.size() && StopWish::signal() == 0; ++i) {
    const FileJob& job = plan.jobs[i];
    progress.show(std::to_string(i + 1) + " of " + std::to_string(plan.jobs.size()) + ": " + job.name);
    const auto write = [&](const fs::path& partial) { return job.write(partial, progress); };
    if (auto failed = write_whole(folder / job.name, kPermissions, write)) return std::move(*failed);
  }
  written.signal = StopWish::signal();
  if (written.signal != 0) return written;
  if (auto failed = write_manifest(folder, plan.about, names, true)) return std::move(*failed);
  std::error_code ignored;
  for (const std::string& name : earlier) {
    // Only what lies inside: a manifest is a file that anyone can edit.
    if (names.count(name) == 0 && name != kManifest && name.find("..") == std::string::npos && fs::path(name).is_relative()) fs::remove(folder / name, ignored);
  }
  return written;
}

}  // namespace cp::cli
