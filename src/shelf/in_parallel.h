// SPDX-License-Identifier: Apache-2.0
// The same small work for many items, on several cores. Which thread does which item is chance; the results are not.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <thread>
#include <vector>

namespace cp {

// Calls work(i) once for each i below `count`; a thread takes `piece` neighbours at a time. `work` must not throw, and calls
// for different i must not touch the same things.
template <typename Work>
void in_parallel(std::size_t count, int threads, std::size_t piece, const Work& work) {
  std::atomic<std::size_t> next{0};
  const auto run = [&] {
    for (std::size_t from = next.fetch_add(piece); from < count; from = next.fetch_add(piece)) {
      for (std::size_t at = from; at < std::min(from + piece, count); ++at) work(at);
    }
  };
  std::vector<std::thread> helpers;
  for (int thread = 1; thread < threads; ++thread) helpers.emplace_back(run);
  run();
  for (std::thread& helper : helpers) helper.join();
}

}  // namespace cp
