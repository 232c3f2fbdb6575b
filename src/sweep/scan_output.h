// SPDX-License-Identifier: Apache-2.0
// Where the answers go: standard output, or a file that a scan which was stopped or killed goes on with. Beside the file
// stands another, FILE.place, as long as the scan is unfinished: how far the input was read and how long the file was then.
#pragma once

#include <chrono>
#include <cstdio>
#include <map>
#include <memory>
#include <string>

#include "sweep/scan_block.h"

namespace cp {

// What a scan is asked for.
struct SweepWish {
  SurveyWish survey;
  std::string input = "-";   // file or "-"
  std::string output = "-";  // file or "-"
  bool resume = false;       // go on with an unfinished file
  bool replace = false;      // write over a file that is there
  int threads = 0;           // 0: as many as the machine offers
  int patience = 0;          // seconds after which a block is taken from a rank that does not answer; 0: never
};

class ScanOutput {
 public:
  // Errors: kBadArgument when the output is the input, an unfinished scan is there and neither `resume` nor `replace` is wished,
  // or none is there to go on with, or it was another one (input, depth); kCannotWrite, also when a file is there and `replace`
  // is not wished. A refused file is left as it was.
  static Result<ScanOutput> open(const SweepWish& wish);
  // Where reading goes on; the start for a fresh scan.
  [[nodiscard]] const Place& start() const { return place_; }
  // Of all runs together.
  [[nodiscard]] const ScanCount& count() const { return count_; }

  // Blocks may come in any order; they are written in the order of their numbers. Error kCannotWrite.
  std::optional<Error> take(BlockAnswer answer);
  // Everything was answered: FILE.place goes. Or not: it stays, and says how far the file is.
  std::optional<Error> finish(bool is_complete);

 private:
  struct Closer {
    void operator()(std::FILE* file) const;  // standard output stays open
  };
  ScanOutput(const SweepWish& wish, std::FILE* file) : wish_(wish), file_(file) {}
  [[nodiscard]] bool is_stdout() const { return file_.get() == stdout; }
  std::optional<Error> go_on();
  std::optional<Error> write_place();
  [[nodiscard]] std::string heading() const;

  SweepWish wish_;
  std::unique_ptr<std::FILE, Closer> file_;
  Place place_;
  ScanCount count_;
  std::uint64_t bytes_ = 0;
  std::uint64_t next_ = 0;                      // number of the block that is written next
  std::map<std::uint64_t, BlockAnswer> waiting_;
  std::chrono::steady_clock::time_point noted_ = std::chrono::steady_clock::now();
};

}  // namespace cp
