// SPDX-License-Identifier: Apache-2.0
// What an import reads: lines, or the records of a table, whose quoted fields may go over line ends. The head is read when it
// is opened, so that what cannot be imported is refused before a shelf is made.
#pragma once

#include <deque>

#include "shelf/table_lines.h"
#include "stream/line_source.h"

namespace cp {

struct IntakeWish;

inline constexpr std::size_t kMostRecordLines = 200;  // of one record; a quotation that is never closed swallows nothing

struct RawLine {
  std::uint64_t number = 0;  // of its first line
  std::string text;
  bool was_cut = false;
};

class IntakeSource {
 public:
  // Errors: as LineSource; kBadArgument when columns were named and are not there, or the first line is the header of a table
  // none of whose columns is the puzzle.
  static Result<IntakeSource> open(const IntakeWish& wish);

  // Null for plain lines.
  [[nodiscard]] const TableHeader* header() const { return header_ ? &*header_ : nullptr; }
  // False at the end, and when something went wrong: trouble() tells which. A quotation that is not closed soon, or wrongly, ends
  // with its line; the lines after it are read by themselves.
  bool next(RawLine& record);
  // After the record that next() gave last.
  [[nodiscard]] const Place& place() const { return place_; }
  [[nodiscard]] const std::optional<Error>& trouble() const { return lines_.trouble(); }
  // Goes on after a place of an earlier run. Errors as LineSource.
  std::optional<Error> skip_to(const Place& goal);

 private:
  struct Ahead {
    RawLine line;
    Place after;
  };

  explicit IntakeSource(LineSource lines) : lines_(std::move(lines)) {}
  std::optional<Error> read_head(const IntakeWish& wish);
  bool take(RawLine& line);
  void put_back(std::deque<Ahead> lines, const Place& before);
  void read_to_end_of(RawLine& record);

  LineSource lines_;
  std::deque<Ahead> ahead_;  // read from lines_ and not given yet
  Place place_;
  std::optional<TableHeader> header_;
};

}  // namespace cp
