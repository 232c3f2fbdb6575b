// SPDX-License-Identifier: Apache-2.0
// What audits print: a table in plain columns for people, and as Markdown for docs/audit.md.
#pragma once

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

namespace cp::audit {

struct Table {
  std::vector<std::string> head;
  std::vector<std::vector<std::string>> rows;
};

inline void print_table(const Table& table) {
  std::vector<std::size_t> widths;
  for (std::size_t column = 0; column < table.head.size(); ++column) {
    widths.push_back(table.head[column].size());
    for (const auto& row : table.rows) widths[column] = std::max(widths[column], row[column].size());
  }
  const auto print_row = [&](const std::vector<std::string>& row) {
    for (std::size_t column = 0; column < row.size(); ++column) {
      const int width = static_cast<int>(widths[column]);
      std::printf(column == 0 ? "%-*s" : "  %*s", width, row[column].c_str());
    }
    std::printf("\n");
  };
  print_row(table.head);
  for (const auto& row : table.rows) print_row(row);
}

inline std::string as_markdown(const Table& table) {
  const auto line = [](const std::vector<std::string>& cells) {
    std::string text = "|";
    for (const std::string& cell : cells) text += " " + cell + " |";
    return text + "\n";
  };
  std::string text = line(table.head) + "|";
  for (std::size_t column = 0; column < table.head.size(); ++column) text += column == 0 ? "---|" : "---:|";
  text += "\n";
  for (const auto& row : table.rows) text += line(row);
  return text;
}

// What an audit was asked for on its command line.
struct AuditOptions {
  bool full = false;
  std::string markdown_file;
  unsigned long long seed = 1;
};

// Reads --full, --markdown FILE, --seed N; exits with 64 on anything else.
inline AuditOptions read_options(int count, char** words) {
  AuditOptions options;
  for (int i = 1; i < count; ++i) {
    const std::string word = words[i];
    if (word == "--full") {
      options.full = true;
    } else if (word == "--markdown" && i + 1 < count) {
      options.markdown_file = words[++i];
    } else if (word == "--seed" && i + 1 < count) {
      options.seed = std::stoull(words[++i]);
    } else {
      std::fprintf(stderr, "'%s' is not understood; there are --full, --markdown FILE and --seed N\n", words[i]);
      std::exit(64);
    }
  }
  return options;
}

// Writes heading, table and a closing sentence; false when the file cannot be written.
inline bool write_markdown(const std::string& file, const std::string& heading, const Table& table, const std::string& closing) {
  if (file.empty()) return true;
  std::ofstream out(file);
  out << "## " << heading << "\n\n" << as_markdown(table) << "\n" << closing << "\n";
  out.close();
  if (!out) std::fprintf(stderr, "%s cannot be written\n", file.c_str());
  return static_cast<bool>(out);
}

}  // namespace cp::audit
