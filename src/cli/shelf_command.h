// SPDX-License-Identifier: Apache-2.0
// What the words after `shelf` share.
#pragma once

#include "cli/command.h"
#include "cli/report.h"
#include "shelf/ask.h"

namespace cp::cli {

void add_shelf_import(CLI::App& shelf, Program& program);
void add_shelf_find(CLI::App& shelf, Program& program);   // find and export
void add_shelf_survey(CLI::App& shelf, Program& program);
void add_shelf_words(CLI::App& shelf, Program& program);  // note, tag and use

// SHELF, the first word of each of them.
void add_shelf_file(CLI::App& command, std::string& file);

// All cores, unless a number is wished.
int threads_wished(int wish);

// Shows each puzzle in turn as text; stops when nobody reads any more. Gives the exit code.
int show_puzzles(Shelf& shelf, const std::vector<std::int64_t>& numbers, const std::function<std::string(const ShelvedPuzzle& puzzle)>& show);

}  // namespace cp::cli
