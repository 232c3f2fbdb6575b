// SPDX-License-Identifier: Apache-2.0
// How texts lie in the file in few bytes. On disk: never change.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace cp {

// Two cells a byte, the first one in the high half: 0 empty, 1 to 15 the digit. A character that is none of ". 0 1-9 A-F" counts
// as empty. An odd number of cells ends with an empty half.
inline std::string packed_cells(std::string_view cells) {
  const auto half = [&](std::size_t at) {
    const char letter = at < cells.size() ? cells[at] : '.';
    if (letter >= '1' && letter <= '9') return letter - '0';
    return letter >= 'A' && letter <= 'F' ? letter - 'A' + 10 : 0;
  };
  std::string bytes;
  for (std::size_t at = 0; at < cells.size(); at += 2) bytes.push_back(static_cast<char>(half(at) * 16 + half(at + 1)));
  return bytes;
}

// Numbers, seven bits a byte, the low ones first; the high bit says that more follows.
inline std::string packed_numbers(const std::vector<std::int64_t>& numbers) {
  std::string bytes;
  for (const std::int64_t number : numbers) {
    auto rest = static_cast<std::uint64_t>(number);
    for (; rest >= 128; rest >>= 7) bytes.push_back(static_cast<char>(rest % 128 + 128));
    bytes.push_back(static_cast<char>(rest));
  }
  return bytes;
}

inline std::vector<std::int64_t> unpacked_numbers(std::string_view bytes) {
  std::vector<std::int64_t> numbers;
  std::uint64_t number = 0;
  int shift = 0;
  for (const char each : bytes) {
    const auto byte = static_cast<unsigned char>(each);
    number |= static_cast<std::uint64_t>(byte % 128) << shift;
    shift += 7;
    if (byte >= 128) continue;
    numbers.push_back(static_cast<std::int64_t>(number));
    number = 0;
    shift = 0;
  }
  return numbers;
}

}  // namespace cp
