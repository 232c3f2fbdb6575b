// SPDX-License-Identifier: Apache-2.0
#include "cli/report.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>

#include "base/text.h"

namespace cp::cli {

namespace {

constexpr std::size_t kManyBytes = 60'000;  // so much is written at once
constexpr std::size_t kWindow = 90;  // characters of a long line that are shown around the place

bool continues_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

// The line of the text with that number, from 1.
std::string_view line_of(std::string_view text, int number) {
  for (int line = 1; line < number; ++line) {
    const auto end = text.find('\n');
    if (end == std::string_view::npos) return {};
    text.remove_prefix(end + 1);
  }
  return text.substr(0, text.find('\n'));
}

// Bytes of the UTF-8 character that starts with this byte; 0 when none does.
std::size_t character_length(unsigned char first) {
  if (first < 0x80) return 1;
  if (first < 0xC2 || first > 0xF4) return 0;
  return first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
}

// The bytes of the line as characters that take one place each on a terminal. What cannot be shown becomes '?'.
std::vector<std::string> characters_of(std::string_view line) {
  std::vector<std::string> characters;
  for (std::size_t i = 0; i < line.size();) {
    std::size_t end = i + 1;
    while (end < line.size() && continues_character(line[end])) ++end;
    const auto first = static_cast<unsigned char>(line[i]);
    if (first == '\t') {
      characters.emplace_back(" ");
    } else if (first < 0x20 || first == 0x7F || character_length(first) != end - i) {
      characters.emplace_back("?");
    } else {
      characters.emplace_back(line.substr(i, end - i));
    }
    i = end;
  }
  return characters;
}

std::string line_with_caret(std::string_view line, std::size_t column, std::size_t length) {
  const std::vector<std::string> characters = characters_of(line);
  std::size_t from = 0;
  if (characters.size() > kWindow && column > kWindow / 2) from = std::min(column - kWindow / 2, characters.size() - kWindow);
  const std::size_t to = std::min(characters.size(), from + kWindow);
  std::string shown = from > 0 ? "  ..." : "  ";
  const std::size_t before = shown.size() + (column - from);
  for (std::size_t i = from; i < to; ++i) shown += characters[i];
  if (to < characters.size()) shown += "...";
  const std::size_t room = to > column ? to - column : 1;
  return shown + "\n" + std::string(before, ' ') + std::string(std::max<std::size_t>(1, std::min(length, room)), '^') + "\n";
}

}  // namespace

bool say(std::string_view text) {
  errno = 0;
  const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
  return written && std::fflush(stdout) == 0;
}

bool SaidTogether::add(std::string_view text) {
  text_ += text;
  return text_.size() < kManyBytes || end();
}

bool SaidTogether::end() {
  const bool is_said = text_.empty() || say(text_);
  text_.clear();
  return is_said;
}

int cannot_say() {
  if (errno != EPIPE) {
    const std::string why = errno == 0 ? "unknown reason" : std::strerror(errno);
    complain(Error{ErrorCode::kCannotWrite, "the answer cannot be written: " + why, "is the disk full?", {}});
  }
  return static_cast<int>(api::Outcome::kBadInput);
}

void complain(const Error& error, const Source& source) {
  std::string text = "counterpoise: ";
  const bool has_place = error.where.is_known() && !source.text.empty();
  if (!source.name.empty()) {
    text += source.name;
    if (has_place && source.has_lines) {
      text += ":" + to_text(error.where.line + source.line_offset) + ":" + to_text(error.where.column);
    }
    text += ": ";
  }
  text += error.message + "\n";
  if (has_place) {
    const auto column = static_cast<std::size_t>(std::max(1, error.where.column)) - 1;
    const std::string_view line = line_of(source.text, error.where.line);
    if (column <= line.size()) text += line_with_caret(line, column, error.where.length);
  }
  if (!error.hint.empty()) text += "hint: " + error.hint + "\n";
  std::fwrite(text.data(), 1, text.size(), stderr);
}

std::string option_of(std::string field) {
  std::replace(field.begin(), field.end(), '_', '-');
  return "--" + field;
}

Error in_options(Error error, const std::string& field) {
  if (!field.empty() && error.message.starts_with(field + " is ")) error.message.replace(0, field.size(), option_of(field));
  return error;
}

int fail(const Error& error, bool as_json, const Source& source, const std::string& field) {
  const api::Answer answer = api::refuse(error, field);
  if (as_json && !say(api::to_line(answer.json) + "\n")) return cannot_say();
  complain(in_options(error, field), source);
  return static_cast<int>(answer.outcome);
}

std::string wrapped(std::string_view text, std::string_view indent, std::size_t width) {
  std::string result;
  while (!text.empty()) {
    std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(text.size(), line.size() + 1));
    do {
      std::size_t end = line.size();
      if (end + indent.size() > width) {
        end = line.rfind(' ', width - indent.size());
        if (end == std::string_view::npos || end == 0) end = std::min(line.find(' '), line.size());
      }
      result.append(indent).append(line.substr(0, end)).append("\n");
      line.remove_prefix(std::min(line.size(), end + 1));
    } while (!line.empty());
  }
  return result;
}

std::string joined_texts(const Json& list, std::string_view separator) {
  std::vector<std::string> texts;
  for (const Json& item : list) texts.push_back(item.get<std::string>());
  return texts.empty() ? "none" : joined(texts, separator);
}

std::string candidates_text(const Json& list, std::string_view sign) {
  std::vector<std::string> texts;
  for (const Json& item : list) {
    texts.push_back(item.at("cell").get<std::string>() + " " + std::string(sign) + " " + std::to_string(item.at("digit").get<int>()));
  }
  return joined(texts, ", ");
}

}  // namespace cp::cli
