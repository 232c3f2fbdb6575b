// SPDX-License-Identifier: Apache-2.0
#include "shelf/table_lines.h"

#include <algorithm>

#include "base/small_letters.h"
#include "base/text.h"

namespace cp {

namespace {

TextSpan place_of(std::size_t offset, std::size_t length) { return {offset, length, 1, static_cast<int>(offset) + 1}; }

// The end of a quoted field that starts at `at`; appends what it holds. Nothing when it is not closed.
std::optional<std::size_t> read_quoted(std::string_view line, std::size_t at, std::string& field) {
  for (std::size_t next = at + 1; next < line.size(); ++next) {
    if (line[next] != '"') {
      field.push_back(line[next]);
    } else if (line.substr(next + 1).starts_with('"')) {
      field.push_back('"');
      ++next;
    } else {
      return next + 1;
    }
  }
  return std::nullopt;
}

}  // namespace

Result<std::vector<std::string>> table_fields(std::string_view line, char separator) {
  std::vector<std::string> fields;
  std::size_t at = 0;
  for (;;) {
    std::string field;
    if (at < line.size() && line[at] == '"') {
      const auto end = read_quoted(line, at, field);
      if (!end) return Error{ErrorCode::kBadArgument, "a quotation is not closed", "close it; a \" inside quotes is written twice", place_of(at, line.size() - at)};
      if (*end < line.size() && line[*end] != separator) {
        return Error{ErrorCode::kBadArgument, "something follows a closed quotation", "a \" inside quotes is written twice", place_of(*end, 1)};
      }
      at = *end;
    } else {
      const std::size_t end = std::min(line.find(separator, at), line.size());
      field = trimmed(line.substr(at, end - at));
      at = end;
    }
    fields.push_back(std::move(field));
    if (at >= line.size()) return fields;
    ++at;
  }
}

bool ends_in_quotation(std::string_view text, char separator) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    std::string field;
    if (text[at] == '"') {
      const auto end = read_quoted(text, at, field);
      if (!end) return true;
      at = *end;
    }
    at = std::min(text.find(separator, at), text.size());
  }
  return false;
}

std::string table_field(std::string_view text) {
  if (text.find_first_of(",;\"\t\n\r") == std::string_view::npos && trimmed(text) == text) return std::string(text);
  std::string quoted = "\"";
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '"') quoted.push_back('"');
    if (text[at] != '\r') quoted.push_back(text[at]);
    else if (!text.substr(at + 1).starts_with('\n')) quoted.push_back('\n');
  }
  return quoted + "\"";
}

std::string TableHeader::field(const std::vector<std::string>& fields, const std::string& column) const {
  const auto found = columns.find(column);
  return found == columns.end() || found->second >= fields.size() ? std::string() : fields[found->second];
}

const std::vector<std::string>& table_columns() {
  static const std::vector<std::string> kColumns = {"puzzle", "name", "source", "licence", "tags", "lessons", "note"};
  return kColumns;
}

Result<std::map<std::string, std::string>> parse_column_names(std::string_view text) {
  std::map<std::string, std::string> names;
  for (const std::string& part : split(text, ',')) {
    const auto equals = part.find('=');
    const std::string ours = in_small_letters(trimmed(part.substr(0, equals)));
    const auto& known = table_columns();
    const TextSpan where = place_of(text.find(part), part.size());
    if (equals == std::string::npos || trimmed(part.substr(equals + 1)).empty()) {
      return Error{ErrorCode::kBadArgument, "'" + part + "' does not say what a column is called", "write for example puzzle=grid,name=title", where};
    }
    if (std::find(known.begin(), known.end(), ours) == known.end()) {
      return Error{ErrorCode::kBadArgument, "'" + ours + "' is nothing that an import takes from a table", "it takes " + listed(known), where};
    }
    names[ours] = std::string(trimmed(part.substr(equals + 1)));
  }
  return names;
}

namespace {

// The fields at the separator that makes the most of them.
std::vector<std::string> most_fields(std::string_view line, char& separator) {
  std::vector<std::string> fields;
  for (const char each : {'\t', ';', ','}) {
    auto split_line = table_fields(line, each);
    if (!split_line || split_line->size() <= fields.size()) continue;
    fields = std::move(split_line).value();
    separator = each;
  }
  return fields;
}

// Letters, and hardly a digit or a point.
bool is_word(std::string_view field) {
  constexpr std::size_t kLongestWord = 40;
  const auto is_letter = [](char letter) { return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || static_cast<unsigned char>(letter) >= 0x80; };
  const auto is_of_a_puzzle = [](char letter) { return (letter >= '0' && letter <= '9') || letter == '.'; };
  return field.size() <= kLongestWord && std::any_of(field.begin(), field.end(), is_letter) && std::count_if(field.begin(), field.end(), is_of_a_puzzle) <= 2;
}

}  // namespace

std::vector<std::string> header_words(std::string_view line) {
  char separator = ',';
  std::vector<std::string> fields = most_fields(line, separator);
  const bool is_header = fields.size() > 1 && std::all_of(fields.begin(), fields.end(), [](const std::string& field) { return field.empty() || is_word(field); }) &&
                         std::count_if(fields.begin(), fields.end(), is_word) > 1;
  if (!is_header) fields.clear();
  return fields;
}

Error no_puzzle_column(const std::vector<std::string>& columns) {
  return Error{ErrorCode::kBadArgument, "the table has no column 'puzzle'", "say what it is called: --columns puzzle=NAME; the columns are " + listed(columns), {}};
}

std::string column_names_text(const std::map<std::string, std::string>& names) {
  std::vector<std::string> parts;
  for (const auto& [ours, theirs] : names) parts.push_back(ours + "=" + in_small_letters(theirs));
  return joined(parts, ",");
}

Result<std::optional<TableHeader>> read_header(std::string_view line, const std::map<std::string, std::string>& names) {
  TableHeader header;
  std::vector<std::string> fields = most_fields(line, header.separator);
  for (std::string& field : fields) field = in_small_letters(field);
  for (const std::string& ours : table_columns()) {
    const auto named = names.find(ours);
    const std::string wanted = named == names.end() ? ours : in_small_letters(named->second);
    const auto found = std::find(fields.begin(), fields.end(), wanted);
    if (found != fields.end()) {
      header.columns[ours] = static_cast<std::size_t>(found - fields.begin());
    } else if (named != names.end()) {
      return Error{ErrorCode::kBadArgument, "the table has no column '" + named->second + "'", "its columns are " + listed(fields), {}};
    }
  }
  if (header.columns.contains("puzzle")) return std::optional<TableHeader>(std::move(header));
  if (names.empty()) return std::optional<TableHeader>();
  return no_puzzle_column(fields);
}

}  // namespace cp
