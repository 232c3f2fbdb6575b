// SPDX-License-Identifier: Apache-2.0
// A place in a text, for error messages.
#pragma once

#include <cstddef>

namespace cp {

// Where in a text something stands. `line` and `column` count from 1, `offset` from 0 in bytes.
// A default span (line 0) means "no place in particular".
struct TextSpan {
  std::size_t offset = 0;
  std::size_t length = 0;
  int line = 0;
  int column = 0;

  [[nodiscard]] constexpr bool is_known() const { return line > 0; }
};

}  // namespace cp
