// SPDX-License-Identifier: Apache-2.0
// Puzzles come in: a stream of lines is read block by block, looked at on all cores (is it a puzzle, is it proper, what is its
// canonical form) and shelved in the order of the lines, each block in one piece together with the note of how far it got.
// So nothing is lost or doubled when the program is killed, and the same call goes on where it ended.
#pragma once

#include <functional>
#include <string>

#include "shelf/intake_source.h"
#include "store/shelf.h"

namespace cp {

struct IntakeWish {
  std::string file;            // "-": standard input
  std::string label;           // under which its progress is noted, with the columns; empty: not at all (standard input without a name)
  std::string source;          // where the puzzles come from, unless the table says it
  std::string licence;
  std::vector<std::string> tags;
  std::map<std::string, std::string> columns;  // parse_column_names(); empty: the usual names
  bool again = false;          // from the first line, although a part was imported before
  int threads = 1;
  int block = 4096;            // lines a block
};

struct IntakeReport {
  ImportState state;
  bool was_resumed = false;  // a part had been done before
  bool was_stopped = false;
};

// What the caller wants to hear of; each may be left out.
struct IntakeNews {
  std::function<bool(const ImportState& state)> progress;  // after every block; false stops there
  std::function<void(const NewLine& line)> fault;
  std::function<void(const Shelved& repeat)> repeat;
};

// Errors: what IntakeSource and Shelf say; kBadArgument when the file has changed since the part that was imported.
Result<IntakeReport> take_in(Shelf& shelf, const IntakeWish& wish, const IntakeNews& news);
// The same with a source that was opened for this wish.
Result<IntakeReport> take_in(Shelf& shelf, const IntakeWish& wish, const IntakeNews& news, IntakeSource source);

// What a line holds, by itself: a puzzle with its properties, or a fault. Nothing for a blank line or a comment.
// `header` null: plain lines, PUZZLE or NAME<TAB>PUZZLE; what follows the puzzle behind a separator is passed over.
std::optional<NewLine> look_at_line(const std::string& text, std::uint64_t number, const TableHeader* header, const IntakeWish& wish);

}  // namespace cp
