// SPDX-License-Identifier: Apache-2.0
// A pan in which every digit has its exact number of copies: is there a set of digits whose copies fill certain cells?
#pragma once

#include <array>
#include <cstdint>

namespace cp {

class ExactPan {
 public:
  static constexpr int kDigits = 9;

  // One more cell, with these candidates (bit per digit). At most 81 cells.
  void add(std::uint32_t candidates);

  // Can a candidate of some cell never be true, when each digit d stands need[d] times, wherever in the pan it may?
  // That is so just when for some set of digits the cells that hold nothing else are more than its copies, or as many
  // and the set has places in further cells (P. Hall, On representatives of subsets, 1935, with copies).
  // A candidate of a digit with no copy is one of these. Also true when the cells are not as many as the copies.
  // To be asked once, when all cells are in.
  [[nodiscard]] bool speaks(const std::array<int, kDigits>& need);

 private:
  static constexpr unsigned kLow = 4;  // digits whose sets stand side by side in one vector
  static constexpr unsigned kBlocks = 1U << (kDigits - kLow);
  typedef std::int8_t Counts __attribute__((vector_size(16)));  // by set of the first four digits

  using BySet = std::array<Counts, kBlocks>;    // by set of the other five
  [[nodiscard]] bool has_telling_set(const BySet& copies) const;

  BySet own_{};  // cells with just these of the other five digits, counted for all supersets among the first four
  std::uint32_t seen_ = 0;  // digits that have a place
  int count_ = 0;
};

}  // namespace cp
