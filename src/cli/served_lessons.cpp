// SPDX-License-Identifier: Apache-2.0
#include "cli/served_lessons.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <vector>

#include "api/json.h"
#include "base/sha256.h"
#include "base/text.h"
#include "cli/whole_file.h"
#include "serve/percent_byte.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;
using cp::Json;
using serve::DoorReply;

constexpr std::string_view kRoot = "/lessons";
constexpr std::string_view kEnding = ".lesson";
constexpr std::size_t kMostEntries = 1000;
constexpr std::size_t kLongestName = 120;          // bytes
constexpr std::size_t kLongestLesson = 2'000'000;  // bytes; longer ones are not read as lessons either

DoorReply refusal(int status, const std::string& message, const std::string& hint = {}, std::string tag = {}) {
  Json json = Json::object();
  json["error"]["message"] = message;
  if (!hint.empty()) json["error"]["hint"] = hint;
  return {status, "application/json", json.dump(-1, ' ', false, Json::error_handler_t::replace), std::move(tag)};
}

// "%20" and the like; nothing when a '%' stands for nothing.
std::optional<std::string> decoded(std::string_view text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '%') {
      result += text[i];
      continue;
    }
    const auto byte = serve::percent_byte(text, i);
    if (!byte) return std::nullopt;
    result += *byte;
    i += 2;
  }
  return result;
}

// A plain file name that ends in .lesson: nothing that leads elsewhere or hides.
bool is_lesson_name(std::string_view name) {
  const bool is_plain = std::none_of(name.begin(), name.end(), [](char c) { return c == '/' || c == '\\' || static_cast<unsigned char>(c) < 32 || c == 127; });
  return is_plain && name.size() > kEnding.size() && name.size() <= kLongestName && name.ends_with(kEnding) && name.front() != '.';
}

// The bytes of a plain file; nothing when it is none, is too long, or cannot be read.
std::optional<std::string> bytes_of(const fs::path& path) {
  std::error_code failed;
  if (!fs::is_regular_file(fs::symlink_status(path, failed)) || fs::file_size(path, failed) > kLongestLesson || failed) return std::nullopt;
  std::ifstream stream(path, std::ios::binary);
  std::string bytes(std::istreambuf_iterator<char>(stream), {});
  return stream.bad() ? std::nullopt : std::optional(std::move(bytes));
}

std::string title_in(const std::string& text) {
  const auto at = text.find("\ntitle:");
  if (at == std::string::npos || at > 4000) return {};
  return std::string(trimmed(std::string_view(text).substr(at + 7, text.find('\n', at + 1) - at - 7)));
}

// The quotes of an entity tag taken off.
std::string bare_tag(std::string_view tag) {
  if (tag.starts_with("W/")) tag.remove_prefix(2);
  return tag.size() >= 2 && tag.front() == '"' && tag.back() == '"' ? std::string(tag.substr(1, tag.size() - 2)) : std::string(tag);
}

}  // namespace

Result<ServedLessons> ServedLessons::open(const std::string& path) {
  std::error_code failed;
  ServedLessons lessons;
  lessons.place_ = path;
  lessons.folder_ = fs::absolute(path, failed);
  if (fs::is_directory(lessons.folder_, failed)) return lessons;
  const std::string name = lessons.folder_.filename().string();
  if (!is_lesson_name(name) || !fs::is_regular_file(lessons.folder_, failed)) {
    return Error{ErrorCode::kNotFound, "'" + path + "' is neither a folder nor a lesson", "name a folder, or a file whose name ends in .lesson", {}};
  }
  lessons.only_ = name;
  lessons.folder_ = lessons.folder_.parent_path();
  return lessons;
}

bool ServedLessons::may_use(const std::string& name) const { return is_lesson_name(name) && (only_.empty() || name == only_); }

std::optional<DoorReply> ServedLessons::answer(const serve::DoorRequest& request) const {
  if (request.path != kRoot && !request.path.starts_with("/lessons/")) return std::nullopt;
  const bool is_read = request.method == "GET" || request.method == "HEAD";
  if (request.path == kRoot) return is_read ? list() : refusal(405, "the list of lessons can only be read");
  const auto name = decoded(request.path.substr(kRoot.size() + 1));
  if (!name || !may_use(*name)) return refusal(404, "there is no such lesson here", "names end in .lesson and hold no slash");
  if (is_read) return read(*name);
  return request.method == "PUT" ? write(*name, request) : refusal(405, "lessons are written with PUT");
}

DoorReply ServedLessons::list() const {
  std::vector<std::string> names;
  std::error_code failed;
  for (fs::directory_iterator at(folder_, failed), end; !failed && at != end && names.size() < kMostEntries; at.increment(failed)) {
    const std::string name = at->path().filename().string();
    if (may_use(name)) names.push_back(name);
  }
  std::sort(names.begin(), names.end());
  Json json = Json::object();
  json["folder"] = place_;
  json["lessons"] = Json::array();
  for (const std::string& name : names) {
    const auto bytes = bytes_of(folder_ / name);
    if (!bytes) continue;
    json["lessons"].push_back({{"name", name}, {"title", title_in(*bytes)}, {"revision", sha256_base64(*bytes)}});
  }
  return {200, "application/json", json.dump(-1, ' ', false, Json::error_handler_t::replace), {}};
}

DoorReply ServedLessons::read(const std::string& name) const {
  auto bytes = bytes_of(folder_ / name);
  if (!bytes) return refusal(404, "'" + name + "' is not there, or cannot be read as a lesson");
  std::string tag = sha256_base64(*bytes);
  return {200, "text/plain; charset=utf-8", std::move(*bytes), std::move(tag)};
}

DoorReply ServedLessons::write(const std::string& name, const serve::DoorRequest& request) const {
  const bool is_new = request.if_none_match == "*";
  if (!is_new && request.if_match.empty()) return refusal(428, "the request does not say which revision it writes over", "send If-Match with the tag that was read, or If-None-Match: *");
  if (request.body.size() > kLongestLesson) return refusal(413, "the lesson is longer than 2 000 000 bytes");
  const fs::path goal = folder_ / name;
  std::optional<DoorReply> conflict;
  // Looked at as late as can be: when the new file is whole and only has to take the place of the old one.
  const auto wrong = write_whole(goal, "see whether the folder may be written", [&](const fs::path& partial) -> std::optional<Error> {
    if (auto failed = write_bytes(partial, std::string(request.body))) return failed;
    std::error_code unknown;
    const bool is_there = fs::exists(fs::symlink_status(goal, unknown));
    const auto before = bytes_of(goal);
    const std::string now = before ? sha256_base64(*before) : std::string();
    if (is_new ? is_there : !before || now != bare_tag(request.if_match)) {
      conflict = refusal(412, is_new ? "there is a file '" + name + "' already" : "'" + name + "' has changed on disk since it was read", "nothing was written", now);
      return Error{ErrorCode::kCannotWrite, "changed meanwhile", "", {}};
    }
    return std::nullopt;
  });
  if (conflict) return *conflict;
  if (wrong) return refusal(500, wrong->message, wrong->hint);
  return {is_new ? 201 : 200, "application/json", "{}", sha256_base64(request.body)};
}

}  // namespace cp::cli
