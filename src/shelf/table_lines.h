// SPDX-License-Identifier: Apache-2.0
// Lines of a table with a header (CSV as in RFC 4180, one record a line; the separator may be a comma, a semicolon or a tab).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace cp {

// The fields of a line. Error kBadArgument, with the place, when a quotation is not closed on the line or goes on behind its end.
Result<std::vector<std::string>> table_fields(std::string_view line, char separator);

// A field as it is written, in quotes when it needs them. Line ends become blanks, so that a record is a line.
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

}  // namespace cp
