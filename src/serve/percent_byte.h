// SPDX-License-Identifier: Apache-2.0
// Bytes of an address written as "%20" (RFC 3986, section 2.1).
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace cp::serve {

constexpr int hex_value(char digit) {
  if (digit >= '0' && digit <= '9') return digit - '0';
  if (digit >= 'a' && digit <= 'f') return digit - 'a' + 10;
  return digit >= 'A' && digit <= 'F' ? digit - 'A' + 10 : -1;
}

// The byte that a '%' at this place and the two letters behind it stand for; nothing when they stand for none.
constexpr std::optional<char> percent_byte(std::string_view text, std::size_t at) {
  if (at + 2 >= text.size() || text[at] != '%') return std::nullopt;
  const int high = hex_value(text[at + 1]);
  const int low = hex_value(text[at + 2]);
  if (high < 0 || low < 0) return std::nullopt;
  return static_cast<char>(high * 16 + low);
}

}  // namespace cp::serve
