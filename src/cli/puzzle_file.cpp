// SPDX-License-Identifier: Apache-2.0
#include "cli/puzzle_file.h"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <memory>

#include "api/reading.h"
#include "base/text.h"

namespace cp::cli {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

Error cannot_read(const std::string& name, const std::string& why, std::string hint) {
  return Error{ErrorCode::kNotFound, "cannot read '" + name + "': " + why, std::move(hint), {}};
}

}  // namespace

std::optional<Line> read_line(std::FILE* file, int number) {
  Line line;
  int character = 0;
  bool any = false;
  while ((character = std::getc(file)) != EOF) {
    any = true;
    if (character == '\n') break;
    line.text.push_back(static_cast<char>(character));
    line.is_too_long = line.text.size() > kLongestLine;
    if (line.is_too_long) break;
  }
  if (!any) return std::nullopt;
  if (!line.text.empty() && line.text.back() == '\r') line.text.pop_back();
  if (number == 1 && line.text.starts_with(kByteOrderMark)) line.text.erase(0, kByteOrderMark.size());
  return line;
}

bool skip_line(std::FILE* file) {
  for (std::size_t skipped = 0; skipped < kLargestFile; ++skipped) {
    const int character = std::getc(file);
    if (character == '\n' || character == EOF) return true;
  }
  return false;
}

bool exists(const std::string& name) {
  std::error_code ignored;
  return std::filesystem::exists(name, ignored);
}

Result<std::vector<Line>> read_lines(const std::string& name) {
  std::error_code ignored;
  if (std::filesystem::is_directory(name, ignored)) return cannot_read(name, "it is a folder", "name a file inside it");
  const std::unique_ptr<std::FILE, CloseFile> file(std::fopen(name.c_str(), "rb"));
  if (!file) return cannot_read(name, std::strerror(errno), "check the name and the permissions");
  std::vector<Line> lines;
  std::size_t total = 0;
  errno = 0;
  while (auto line = read_line(file.get(), static_cast<int>(lines.size()) + 1)) {
    total += line->text.size() + 1;
    if (line->is_too_long || total > kLargestFile) {
      return cannot_read(name, line->is_too_long ? "line " + to_text(static_cast<long long>(lines.size()) + 1) + " is too long for a puzzle" : "it is too large",
                         "a file of puzzles has one puzzle a line, or one puzzle drawn over several lines");
    }
    lines.push_back(std::move(*line));
  }
  if (std::ferror(file.get()) != 0) return cannot_read(name, std::strerror(errno), "check the file");
  return lines;
}

NamedPuzzle named_puzzle(const std::string& line) {
  const auto tab = line.find('\t');
  if (tab == std::string::npos || is_puzzle(line)) return {"", line, 0, 0};
  const std::string first = line.substr(0, tab);
  if (is_puzzle(first)) return {"", first, 0, 0};
  NamedPuzzle named;
  named.name = first;
  named.offset = tab + 1;
  for (const char byte : line.substr(0, named.offset)) named.column += (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U ? 1 : 0;
  const auto end = line.find('\t', named.offset);
  named.puzzle = line.substr(named.offset, end == std::string::npos ? end : end - named.offset);
  return named;
}

bool holds_nothing(const std::string& line) {
  const std::string_view text = trimmed(line);
  return text.empty() || text.front() == '#';
}

bool is_puzzle(const std::string& text) { return api::is_puzzle(text); }

}  // namespace cp::cli
