// SPDX-License-Identifier: Apache-2.0
// How far a long job is, on standard error: on a terminal at most once a second, elsewhere (in a log) every five seconds.
// Nothing is said before that time has passed once.
#pragma once

#include <chrono>
#include <string>

namespace cp::cli {

class Progress {
 public:
  Progress();
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  // "3 of 17: stills/scene-03-1080.png". On a terminal the line replaces the one before.
  void show(const std::string& words);

 private:
  std::chrono::steady_clock::time_point last_;
  bool is_terminal_;
  bool has_line_ = false;
};

}  // namespace cp::cli
