// SPDX-License-Identifier: Apache-2.0
// Capitals of ASCII made small; every other byte stays, whatever the locale.
#pragma once

#include <string>
#include <string_view>

namespace cp {

constexpr char small_letter(char letter) { return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter; }

inline std::string in_small_letters(std::string_view text) {
  std::string small(text);
  for (char& letter : small) letter = small_letter(letter);
  return small;
}

}  // namespace cp
