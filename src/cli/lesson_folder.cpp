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

constexpr std::string_view kLessonManifest = "lesson.json";
constexpr std::string_view kSeriesManifest = "series.json";
constexpr std::string_view kMadeBy = "counterpoise";
constexpr const char* kDigests = "digests";  // in series.json: the digest of each lesson by its name
constexpr std::uintmax_t kLargestManifest = 1'000'000;

std::string manifest_of(const FolderPlan& plan) { return std::string(plan.parts.empty() ? kLessonManifest : kSeriesManifest); }

// The manifest of an earlier lesson or series in this folder; null when there was none.
Json earlier_manifest(const fs::path& path) {
  std::error_code failed;
  if (!fs::is_regular_file(path, failed) || fs::file_size(path, failed) > kLargestManifest) return {};
  std::ifstream file(path, std::ios::binary);
  Json manifest = Json::parse(file, nullptr, false);
  if (!manifest.is_object() || manifest.value("made_by", Json()) != Json(kMadeBy)) return {};
  return manifest;
}

// Only what lies inside: a manifest is a file that anyone can edit.
bool is_inside(const std::string& name) { return !name.empty() && name.find("..") == std::string::npos && fs::path(name).is_relative(); }

// The files it says the folder consists of.
std::set<std::string> files_of(const Json& manifest) {
  std::set<std::string> names;
  const Json files = manifest.is_object() ? manifest.value("files", Json::array()) : Json::array();
  for (const Json& name : files) {
    if (name.is_string() && is_inside(name.get<std::string>())) names.insert(name.get<std::string>());
  }
  return names;
}

// The folders below in which these files lie, the outer ones first.
std::set<std::string> folders_of(const std::set<std::string>& names) {
  std::set<std::string> folders;
  for (const std::string& name : names) {
    for (auto at = name.find('/'); at != std::string::npos; at = name.find('/', at + 1)) folders.insert(name.substr(0, at));
  }
  return folders;
}

// The first thing in the folder that is not ours. Hidden files belong to the desktop, not to people.
std::optional<std::string> foreign_file(const fs::path& folder, const std::set<std::string>& ours, const std::set<std::string>& folders, std::error_code& failed) {
  std::set<std::string> foreign;
  for (fs::recursive_directory_iterator at(folder, failed), end; !failed && at != end; at.increment(failed)) {
    const std::string name = at->path().filename().string();
    const std::string relative = at->path().lexically_relative(folder).generic_string();
    if (name.starts_with('.')) {
      at.disable_recursion_pending();
    } else if (at->is_directory(failed) && (folders.count(relative) != 0 || fs::is_empty(at->path(), failed))) {
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

void remove_left_overs(const fs::path& folder, const std::set<std::string>& folders) {
  std::error_code failed;
  std::vector<fs::path> places = {folder};
  for (const std::string& name : folders) places.push_back(folder / name);
  for (const fs::path& place : places) {
    std::vector<fs::path> old;
    for (fs::directory_iterator at(place, failed), end; !failed && at != end; at.increment(failed)) {
      if (is_left_over(at->path().filename().string())) old.push_back(at->path());
    }
    for (const fs::path& path : old) fs::remove_all(path, failed);
  }
}

// `ours`: what an earlier run may have left; `folders`: where files of ours lie or will lie.
std::optional<Error> prepare(const fs::path& folder, const std::set<std::string>& ours, const std::set<std::string>& folders, bool is_series) {
  std::error_code failed;
  const std::string whole = is_series ? "series" : "lesson";
  if (fs::exists(folder, failed) && !fs::is_directory(folder, failed)) {
    return cannot_write(folder, "there is a file of that name", "choose another name for the folder of the " + whole);
  }
  if (fs::is_directory(folder, failed)) {
    const auto foreign = foreign_file(folder, ours, folders, failed);
    if (failed) return cannot_write(folder, failed.message(), kPermissions);
    if (foreign) {
      return cannot_write(folder, "the folder holds '" + *foreign + "', which is no part of a " + whole, "choose an empty or a new folder; nothing was changed");
    }
  }
  fs::create_directories(folder, failed);
  for (const std::string& name : folders) {
    if (!failed) fs::create_directories(folder / name, failed);
  }
  if (failed) return cannot_write(folder, failed.message(), "choose a folder that you may write to");
  remove_left_overs(folder, folders);
  return std::nullopt;
}

std::optional<Error> write_manifest(const fs::path& path, const Json& about, const std::set<std::string>& names, bool is_finished) {
  Json manifest = Json::object();
  manifest["made_by"] = kMadeBy;
  manifest.update(about);
  manifest["files"] = names;
  if (!is_finished) manifest["unfinished"] = true;
  return write_whole(path, kPermissions, manifest.dump(1, ' ', false, Json::error_handler_t::replace) + "\n");
}

// Each lesson of a series gets a lesson.json of its own, so that it is a lesson to whoever takes it out.
std::optional<Error> write_part_manifests(const fs::path& folder, const FolderPlan& plan, std::set<std::string>& names) {
  for (const FolderPart& part : plan.parts) {
    std::set<std::string> inner;
    const std::string within = part.name + "/";
    for (const std::string& name : names) {
      if (name.starts_with(within)) inner.insert(name.substr(within.size()));
    }
    if (auto failed = write_manifest(folder / part.name / kLessonManifest, part.about, inner, true)) return failed;
  }
  for (const FolderPart& part : plan.parts) names.insert(part.name + "/" + std::string(kLessonManifest));
  return std::nullopt;
}

bool is_about_the_same(const Json& manifest, const Json& about) {
  if (!manifest.is_object()) return false;
  for (const auto& entry : about.items()) {
    if (entry.key() != kDigest && manifest.value(entry.key(), Json()) != entry.value()) return false;
  }
  return true;
}

// The lesson of a series to which the file belongs; null for the files of a single lesson and for the page of the series.
const FolderPart* part_of(const FolderPlan& plan, const std::string& name) {
  const auto found = std::find_if(plan.parts.begin(), plan.parts.end(), [&name](const FolderPart& part) { return name.starts_with(part.name + "/"); });
  return found == plan.parts.end() ? nullptr : &*found;
}

// The kind of a file of the plan: in a series the name of the lesson comes first.
std::optional<FileKind> kind_in(const FolderPlan& plan, const std::string& name) {
  const FolderPart* part = part_of(plan, name);
  return kind_of(part == nullptr ? name : name.substr(part->name.size() + 1));
}

// Was this earlier file made from what the plan is made from? A manifest without a digest does not tell, so no.
bool is_from_the_same(const Json& before, const FolderPlan& plan, const std::string& name) {
  const FolderPart* part = part_of(plan, name);
  const Json digests = before.value(kDigests, Json());
  const Json old = part == nullptr ? before.value(kDigest, Json()) : digests.is_object() ? digests.value(part->name, Json()) : Json();
  return old.is_string() && old == (part == nullptr ? plan.about : part->about).value(kDigest, Json());
}

// What the manifest says about the files. While the work goes on there may be files below a lesson that were made from another
// one (they are in `earlier`): then the digest is left out, so that a run after a crash does not keep them.
Json about_of(const FolderPlan& plan, const Json& before, const std::set<std::string>& earlier) {
  Json about = plan.about;
  for (const FolderPart& part : plan.parts) about[kDigests][part.name] = part.about.value(kDigest, Json());
  for (const std::string& name : earlier) {
    if (is_from_the_same(before, plan, name)) continue;
    if (const FolderPart* part = part_of(plan, name)) about[kDigests].erase(part->name);
    else about.erase(kDigest);
  }
  return about;
}

// Those of the earlier files that stay: made from the same, of a kind that is not written now, and there (a run that was killed
// names files that it did not come to).
std::set<std::string> kept_files(const fs::path& folder, const Json& before, const std::set<std::string>& earlier, const FolderPlan& plan) {
  std::set<FileKind> made;
  std::error_code failed;
  for (const FileJob& job : plan.jobs) {
    if (const auto kind = kind_in(plan, job.name); kind && (plan.parts.empty() || job.name.find('/') != std::string::npos)) made.insert(*kind);
  }
  std::set<std::string> kept;
  for (const std::string& name : earlier) {
    const auto kind = kind_in(plan, name);
    if (kind && made.count(*kind) == 0 && is_from_the_same(before, plan, name) && fs::exists(folder / name, failed)) kept.insert(name);
  }
  return kept;
}

void remove_old(const fs::path& folder, const std::set<std::string>& earlier, const std::set<std::string>& names) {
  std::error_code ignored;
  for (const std::string& name : earlier) {
    if (names.count(name) == 0) fs::remove(folder / name, ignored);
  }
  const std::set<std::string> used = folders_of(names);
  const std::set<std::string> before = folders_of(earlier);
  for (auto at = before.rbegin(); at != before.rend(); ++at) {
    if (used.count(*at) == 0) fs::remove(folder / *at, ignored);  // empty ones only
  }
}

// Goes through the jobs until all are done or a signal comes.
std::optional<Error> carry_out(const fs::path& folder, const std::vector<FileJob>& jobs) {
  Progress progress;
  for (std::size_t i = 0; i < jobs.size() && StopWish::signal() == 0; ++i) {
    progress.show(std::to_string(i + 1) + " of " + std::to_string(jobs.size()) + ": " + jobs[i].name);
    const auto write = [&](const fs::path& partial) { return jobs[i].write(partial, progress); };
    if (auto failed = write_whole(folder / jobs[i].name, kPermissions, write)) return failed;
  }
  return std::nullopt;
}

}  // namespace

Result<WrittenFolder> write_folder(const std::string& folder_name, const FolderPlan& plan) {
  const fs::path folder(folder_name.empty() ? "." : folder_name);
  const fs::path manifest = folder / manifest_of(plan);
  const Json before = earlier_manifest(manifest);
  const std::set<std::string> earlier = files_of(before);
  std::set<std::string> names;
  if (plan.keeps_others && is_about_the_same(before, plan.about)) names = kept_files(folder, before, earlier, plan);
  WrittenFolder written;
  for (const FileJob& job : plan.jobs) {
    names.insert(job.name);
    written.names.push_back(job.name);
  }
  std::set<std::string> possible = names;
  for (const FolderPart& part : plan.parts) possible.insert(part.name + "/" + std::string(kLessonManifest));
  possible.insert(earlier.begin(), earlier.end());
  std::set<std::string> ours = earlier;
  if (before.is_object()) ours.insert(manifest_of(plan));
  if (auto failed = prepare(folder, ours, folders_of(possible), !plan.parts.empty())) return std::move(*failed);
  const StopWish stop_wish;
  if (auto failed = write_manifest(manifest, about_of(plan, before, earlier), possible, false)) return std::move(*failed);
  if (auto failed = carry_out(folder, plan.jobs)) return std::move(*failed);
  written.signal = StopWish::signal();
  if (written.signal != 0) return written;
  if (auto failed = write_part_manifests(folder, plan, names)) return std::move(*failed);
  if (auto failed = write_manifest(manifest, about_of(plan, {}, {}), names, true)) return std::move(*failed);
  remove_old(folder, earlier, names);
  return written;
}

}  // namespace cp::cli
