// SPDX-License-Identifier: Apache-2.0
// A small random generator whose sequence depends on the seed alone, on every machine and compiler.
// Source: SplitMix64, G. Steele, D. Lea, C. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
#pragma once

#include <cstdint>
#include <utility>

namespace cp {

class Rng {
 public:
  explicit constexpr Rng(std::uint64_t seed) : state_(seed) {}

  // The next 64 random bits.
  constexpr std::uint64_t next() {
    state_ += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
  }

  // A number in 0 .. bound-1. Precondition: 0 < bound < 2^32. The bias is below 2^-32.
  constexpr std::uint32_t below(std::uint32_t bound) {
    return static_cast<std::uint32_t>(((next() >> 32) * bound) >> 32);
  }

  // Puts the items in random order (Fisher-Yates).
  template <typename Items>
  constexpr void shuffle(Items& items) {
    for (auto left = static_cast<std::uint32_t>(items.size()); left > 1; --left) {
      using std::swap;
      swap(items[left - 1], items[below(left)]);
    }
  }

 private:
  std::uint64_t state_;
};

}  // namespace cp
