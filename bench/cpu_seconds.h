// SPDX-License-Identifier: Apache-2.0
// Processor time of this process in all its threads, in seconds: what a busy machine does not blur.
#pragma once

#include <ctime>

namespace cp::bench {

inline double cpu_seconds() {
  std::timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

}  // namespace cp::bench
