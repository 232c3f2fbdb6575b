// SPDX-License-Identifier: Apache-2.0
// A collection goes through a scan in blocks: some lines of the input, turned into as many lines of answer. Who works on a
// block (a thread, another machine) makes no difference to the answer.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "scan/survey_puzzle.h"
#include "stream/line_source.h"

namespace cp {

struct ScanBlock {
  std::uint64_t number = 0;      // from 0
  std::uint64_t first_line = 0;  // from 1
  std::vector<std::string> lines;
  Place end;                     // of the input, after the block
};

struct ScanCount {
  std::uint64_t puzzles = 0;
  std::uint64_t faults = 0;  // lines that are no puzzle
};

struct BlockAnswer {
  std::uint64_t number = 0;
  std::string text;  // lines, each with its end
  ScanCount count;
  Place end;
};

// Empty lines and lines that start with '#' are passed over, and so is a first line that says "puzzle". Of a table the first
// field counts (or the second, where tabs part a name from a puzzle).
BlockAnswer answer_block(const ScanBlock& block, const SurveyWish& wish);

// Lines in a block: so many that a block takes some tenths of a second.
std::size_t lines_in_block(const SurveyWish& wish);

// Reads blocks one after the other.
class BlockReader {
 public:
  BlockReader(LineSource source, std::size_t lines) : source_(std::move(source)), lines_(lines) {}
  // Goes on where an earlier run ended. Errors as LineSource::skip_to().
  std::optional<Error> skip_to(const Place& place) { return source_.skip_to(place); }
  // Empty at the end, and when something went wrong: trouble() tells.
  std::optional<ScanBlock> next();
  [[nodiscard]] const std::optional<Error>& trouble() const { return source_.trouble(); }

 private:
  LineSource source_;
  std::size_t lines_;
  std::uint64_t number_ = 0;
};

}  // namespace cp
