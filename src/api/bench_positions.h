// SPDX-License-Identifier: Apache-2.0
// The positions of the bench signature. Frozen: a change here changes the signature, and says nothing about the engine.
#pragma once

#include <span>
#include <string_view>

namespace cp::api {

struct BenchPosition {
  std::string_view name;
  std::string_view puzzle;
  int most_free_slack = 1;  // for balances along its path; 0 where more would take seconds
};

std::span<const BenchPosition> bench_positions();

}  // namespace cp::api
