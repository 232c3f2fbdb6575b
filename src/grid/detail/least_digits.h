// SPDX-License-Identifier: Apache-2.0
// 9x9: of the orders with the least pattern, those under which the digits, renamed as they appear, are smallest.
#pragma once

#include "grid/detail/least_pattern.h"

namespace cp::detail {

struct LeastDigits {
  std::array<std::uint8_t, 81> names{};  // of the givens as they stand in the pattern, row by row
  int givens = 0;
  std::uint8_t turned = 0;
  std::array<std::uint8_t, 9> rows{};     // sources of the first order that leads there
  std::array<std::uint8_t, 9> columns{};
  std::uint64_t count = 0;                // orders that lead there, those of lines without givens included
};
LeastDigits least_digits(const BothWays& board, const LeastPattern& pattern);

}  // namespace cp::detail
