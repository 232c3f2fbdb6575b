// SPDX-License-Identifier: Apache-2.0
#include "cli/progress.h"

#include <unistd.h>

#include <cstdio>

namespace cp::cli {

Progress::Progress() : last_(std::chrono::steady_clock::now()), is_terminal_(::isatty(STDERR_FILENO) == 1) {}

Progress::~Progress() {
  if (has_line_) std::fputs("\r\x1b[K", stderr);
}

void Progress::show(const std::string& words) {
  const auto now = std::chrono::steady_clock::now();
  if (now - last_ < std::chrono::seconds(is_terminal_ ? 1 : 5)) return;
  last_ = now;
  std::fprintf(stderr, is_terminal_ ? "\r\x1b[Kcounterpoise: %s" : "counterpoise: %s\n", words.c_str());
  std::fflush(stderr);
  has_line_ = is_terminal_;
}

}  // namespace cp::cli
