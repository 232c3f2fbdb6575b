// SPDX-License-Identifier: Apache-2.0
// PUZZLE on the command line: the puzzle itself, a file, or '-' for standard input. docs/formats/position.md says how
// files are read.
#pragma once

#include <functional>
#include <string>

#include "api/answer.h"

namespace cp::cli {

// How a command answers a puzzle, and shows the answer to a person.
struct PuzzleTask {
  std::function<api::Answer(const std::string& puzzle)> ask;
  std::function<std::string(const Json& answer)> show;
  // The text of another field of the request, for messages about it ("left" -> what stood after --left).
  std::function<std::string(const std::string& field)> field_text = [](const std::string&) { return std::string(); };
};

// Answers every puzzle of the argument as it comes. Gives the exit code: the worst that any puzzle had, where bad input
// counts as worse than open and open as worse than refuted.
int answer_puzzles(const std::string& argument, bool as_json, const PuzzleTask& task);

// The text of the one puzzle of the argument, for commands that take no lists.
Result<std::string> single_puzzle(const std::string& argument);

// The help for PUZZLE, the same everywhere.
inline constexpr const char* kPuzzleHelp =
    "the puzzle itself (81 characters, '.' or 0 for an empty cell), a file that holds one puzzle or one a line, or - for standard input";

}  // namespace cp::cli
