// SPDX-License-Identifier: Apache-2.0
// One number for a sequence of texts and numbers. FNV-1a, 64 bits: G. Fowler, L. C. Noll, K.-P. Vo; the constants are
// the published ones (draft-eastlake-fnv).
#pragma once

#include <cstdint>
#include <string_view>

namespace cp::api {

class Signature {
 public:
  constexpr void add(std::string_view text) {
    add(static_cast<std::int64_t>(text.size()));  // so that "ab","c" differs from "a","bc"
    for (const char character : text) add_byte(static_cast<std::uint8_t>(character));
  }
  constexpr void add(std::int64_t number) {
    auto bits = static_cast<std::uint64_t>(number);
    for (int i = 0; i < 8; ++i, bits >>= 8) add_byte(static_cast<std::uint8_t>(bits & 0xFFU));
  }
  [[nodiscard]] constexpr std::uint64_t value() const { return state_; }

  // For a single run of bytes, as published.
  constexpr void add_byte(std::uint8_t byte) { state_ = (state_ ^ byte) * 0x100000001B3ULL; }

 private:
  std::uint64_t state_ = 0xCBF29CE484222325ULL;
};

}  // namespace cp::api
