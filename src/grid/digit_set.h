// SPDX-License-Identifier: Apache-2.0
// A set of digits in one word. `for (Digit d : set)` goes from small to large.
#pragma once

#include <bit>
#include <cstdint>

#include "grid/cell.h"

namespace cp {

class DigitSet {
 public:
  constexpr DigitSet() = default;
  explicit constexpr DigitSet(std::uint32_t bits) : bits_(static_cast<std::uint16_t>(bits)) {}
  static constexpr DigitSet of(Digit digit) { return DigitSet(1U << digit.index); }
  // The digits 1 .. side.
  static constexpr DigitSet first(int side) { return DigitSet((1U << side) - 1U); }

  [[nodiscard]] constexpr std::uint16_t bits() const { return bits_; }
  [[nodiscard]] constexpr int size() const { return std::popcount(bits_); }
  [[nodiscard]] constexpr bool is_empty() const { return bits_ == 0; }
  [[nodiscard]] constexpr bool has(Digit digit) const { return ((bits_ >> digit.index) & 1U) != 0; }
  // The smallest digit. Precondition: not empty.
  [[nodiscard]] constexpr Digit lowest() const { return Digit(std::countr_zero(bits_)); }
  [[nodiscard]] constexpr bool is_subset_of(DigitSet other) const { return (bits_ & ~other.bits_) == 0; }
  constexpr void add(Digit digit) { bits_ = static_cast<std::uint16_t>(bits_ | (1U << digit.index)); }
  constexpr void remove(Digit digit) { bits_ = static_cast<std::uint16_t>(bits_ & ~(1U << digit.index)); }

  friend constexpr DigitSet operator&(DigitSet a, DigitSet b) { return DigitSet(static_cast<std::uint32_t>(a.bits_ & b.bits_)); }
  friend constexpr DigitSet operator|(DigitSet a, DigitSet b) { return DigitSet(static_cast<std::uint32_t>(a.bits_ | b.bits_)); }
  // Digits of a that are not in b.
  friend constexpr DigitSet operator-(DigitSet a, DigitSet b) { return DigitSet(static_cast<std::uint32_t>(a.bits_ & ~b.bits_)); }
  constexpr DigitSet& operator|=(DigitSet other) { return *this = *this | other; }
  constexpr DigitSet& operator&=(DigitSet other) { return *this = *this & other; }
  friend constexpr bool operator==(DigitSet, DigitSet) = default;

  class Iterator {
   public:
    explicit constexpr Iterator(std::uint32_t left) : left_(left) {}
    constexpr Digit operator*() const { return Digit(std::countr_zero(left_)); }
    constexpr Iterator& operator++() {
      left_ &= left_ - 1;
      return *this;
    }
    friend constexpr bool operator==(Iterator, Iterator) = default;

   private:
    std::uint32_t left_;
  };
  [[nodiscard]] constexpr Iterator begin() const { return Iterator(bits_); }
  [[nodiscard]] constexpr Iterator end() const { return Iterator(0); }

 private:
  std::uint16_t bits_ = 0;
};

}  // namespace cp
