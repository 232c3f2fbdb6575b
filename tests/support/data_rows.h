// SPDX-License-Identifier: Apache-2.0
// The records of tests/data for tests.
#pragma once

#include <fstream>
#include <string>
#include <string_view>
#include <vector>

#include "base/text.h"
#include "grid/notation.h"

namespace cp::support {

using Row = std::vector<std::string>;

// The records of tests/data/<file>: lines, split at tabs.
inline std::vector<Row> data_rows(const std::string& file) {
  std::ifstream in(std::string(CP_SOURCE_DIR) + "/tests/data/" + file);
  std::vector<Row> rows;
  for (std::string line; std::getline(in, line);) rows.push_back(split(line, '\t'));
  return rows;
}

struct PublishedPuzzle {
  std::string name;
  std::string puzzle;
  std::string solution;
};

// The 55 published puzzles of puzzles.tsv (sources: tests/data/sources.md).
inline std::vector<PublishedPuzzle> published_puzzles() {
  std::vector<PublishedPuzzle> puzzles;
  for (const Row& row : data_rows("puzzles.tsv")) puzzles.push_back({row.at(0), row.at(1), row.at(2)});
  return puzzles;
}

// The puzzle of that name; empty when there is none.
inline std::string published_puzzle(std::string_view name) {
  for (const PublishedPuzzle& row : published_puzzles()) {
    if (row.name == name) return row.puzzle;
  }
  return {};
}

// A position from text that is known to be right.
inline Position read(std::string_view text) { return parse_position(text).value(); }

}  // namespace cp::support
