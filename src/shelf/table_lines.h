// SPDX-License-Identifier: Apache-2.0
// Records of a table with a header (CSV as in RFC 4180; the separator may be a comma, a semicolon or a tab).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace cp {

// The fields of a record. Error kBadArgument, with the place, when a quotation is not closed or goes on behind its end.
Result<std::vector<std::string>> table_fields(std::string_view line, char separator);

// Is a quotation open at the end of this text? Then the record goes on behind a line end, or is broken.
bool ends_in_quotation(std::string_view text, char separator);

// A field as it is written, in quotes when it needs them. Line ends stay, as \n.
std::string table_field(std::string_view text);

// Which column is what.
struct TableHeader {
  char separator = ',';
  std::map<std::string, std::size_t> columns;  // "puzzle" -> 0, for those of kTableColumns that are there

  // The field of a column, or empty.
  [[nodiscard]] std::string field(const std::vector<std::string>& fields, const std::string& column) const;
};

// What an import takes from a table: puzzle, name, source, licence, tags, lessons (both with ';' between them), note.
const std::vector<std::string>& table_columns();

// "puzzle=grid,name=title": what the columns are called in the table, by ours. Error kBadArgument with the place in the text.
Result<std::map<std::string, std::string>> parse_column_names(std::string_view text);

// The header of a table, or nothing when the line is none: it needs a column for the puzzle. Small and capital letters are
// the same. Error kBadArgument when columns were named and are not there.
Result<std::optional<TableHeader>> read_header(std::string_view line, const std::map<std::string, std::string>& names);

// The words of a line that looks like a header: several fields, and no field that could be a puzzle. Else empty.
std::vector<std::string> header_words(std::string_view line);
// The error for a table none of whose columns is the puzzle.
Error no_puzzle_column(const std::vector<std::string>& columns);

// "name=title,puzzle=grid": what parse_column_names() read, in a fixed order.
std::string column_names_text(const std::map<std::string, std::string>& names);

}  // namespace cp
