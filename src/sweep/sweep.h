// SPDX-License-Identifier: Apache-2.0
// How does one go through a whole collection? All cores work on blocks; the answers come out in the order of the input.
#pragma once

#include <functional>

#include "sweep/scan_output.h"

namespace cp {

// What looks on while a scan runs. Both are asked from one thread at a time.
struct SweepWatch {
  std::function<void(const ScanCount& so_far)> progress = [](const ScanCount&) {};
  std::function<bool()> wants_stop = [] { return false; };
};

struct SweepEnd {
  ScanCount count;       // of this run and those it went on with
  ScanCount before;      // of those it went on with
  bool was_stopped = false;
};

// Errors as LineSource and ScanOutput have them; what was answered before the error is kept.
Result<SweepEnd> sweep(const SweepWish& wish, const SweepWatch& watch);

}  // namespace cp
