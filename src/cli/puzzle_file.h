// SPDX-License-Identifier: Apache-2.0
// Reading lines and files, with limits: whatever the input is, it is settled quickly.
#pragma once

#include <cstdio>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"

namespace cp::cli {

inline constexpr std::size_t kLongestLine = 100'000;        // bytes; no puzzle is longer, even drawn with blanks
inline constexpr std::size_t kLargestFile = 256'000'000;    // bytes

struct Line {
  std::string text;       // without the line end
  bool is_too_long = false;  // only the start was read; skip_line() passes over the rest
};

// The next line, or empty at the end. Line ends are \n or \r\n; a byte order mark at the start of `number` 1 is dropped.
std::optional<Line> read_line(std::FILE* file, int number);

// Passes over the rest of a line. False when there is no end of it within kLargestFile.
bool skip_line(std::FILE* file);

// The lines of a file. Errors kNotFound: there is none, it is a folder, it cannot be read, it is too large.
Result<std::vector<Line>> read_lines(const std::string& name);

// Is there a file or folder of that name?
bool exists(const std::string& name);

// The puzzle in a line `NAME<TAB>PUZZLE<TAB>...` or `PUZZLE`.
struct NamedPuzzle {
  std::string name;
  std::string puzzle;
  std::size_t offset = 0;  // bytes before the puzzle
  int column = 0;          // characters before the puzzle
};
NamedPuzzle named_puzzle(const std::string& line);

// Blank lines and lines that start with '#' hold nothing.
bool holds_nothing(const std::string& line);

// Can the text be read as a puzzle?
bool is_puzzle(const std::string& text);

}  // namespace cp::cli
