// SPDX-License-Identifier: Apache-2.0
// Stopping a long job on Ctrl-C (or when the machine asks) without leaving halves behind.
#pragma once

namespace cp::cli {

// While one lives, SIGINT, SIGTERM and SIGHUP only leave a note; what worked before is put back at the end.
class StopWish {
 public:
  StopWish();
  ~StopWish();
  StopWish(const StopWish&) = delete;
  StopWish& operator=(const StopWish&) = delete;

  // The signal that came, or 0.
  [[nodiscard]] static int signal();
};

// Ends the program as the signal would have ended it, so that a calling script knows.
void end_by(int signal);

}  // namespace cp::cli
