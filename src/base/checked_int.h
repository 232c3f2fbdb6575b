// SPDX-License-Identifier: Apache-2.0
// 64-bit integers that remember an overflow instead of wrapping. Used wherever a sum decides whether a proof holds.
#pragma once

#include <cstdint>

namespace cp {

class CheckedInt {
 public:
  constexpr CheckedInt() = default;
  constexpr CheckedInt(std::int64_t value) : value_(value) {}  // NOLINT: implicit on purpose

  // False once any operation on the way here overflowed; value() means nothing then.
  [[nodiscard]] constexpr bool is_ok() const { return ok_; }
  [[nodiscard]] constexpr std::int64_t value() const { return value_; }

  constexpr CheckedInt& operator+=(CheckedInt other) {
    ok_ = ok_ && other.ok_ && !__builtin_add_overflow(value_, other.value_, &value_);
    return *this;
  }
  constexpr CheckedInt& operator-=(CheckedInt other) {
    ok_ = ok_ && other.ok_ && !__builtin_sub_overflow(value_, other.value_, &value_);
    return *this;
  }
  constexpr CheckedInt& operator*=(CheckedInt other) {
    ok_ = ok_ && other.ok_ && !__builtin_mul_overflow(value_, other.value_, &value_);
    return *this;
  }
  friend constexpr CheckedInt operator+(CheckedInt a, CheckedInt b) { return a += b; }
  friend constexpr CheckedInt operator-(CheckedInt a, CheckedInt b) { return a -= b; }
  friend constexpr CheckedInt operator*(CheckedInt a, CheckedInt b) { return a *= b; }

 private:
  std::int64_t value_ = 0;
  bool ok_ = true;
};

}  // namespace cp
