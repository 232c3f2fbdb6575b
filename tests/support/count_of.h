// SPDX-License-Identifier: Apache-2.0
// How often does a part occur in a text? Occurrences that overlap count once.
#pragma once

#include <string_view>

namespace cp::support {

inline int count_of(std::string_view text, std::string_view part) {
  int count = 0;
  for (auto at = text.find(part); at != std::string_view::npos; at = text.find(part, at + part.size())) ++count;
  return count;
}

}  // namespace cp::support
