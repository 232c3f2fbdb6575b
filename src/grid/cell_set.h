// SPDX-License-Identifier: Apache-2.0
// A set of cells of a grid up to 16x16, as four 64-bit words. `for (Cell c : set)` goes row by row.
#pragma once

#include <array>
#include <bit>
#include <cassert>
#include <cstddef>
#include <cstdint>

#include "grid/cell.h"

namespace cp {

class CellSet {
 public:
  static constexpr int kWords = kMaxCells / 64;

  constexpr CellSet() = default;
  static constexpr CellSet of(Cell cell) {
    CellSet set;
    set.add(cell);
    return set;
  }

  [[nodiscard]] constexpr bool has(Cell cell) const { return ((words_[cell.index >> 6] >> (cell.index & 63U)) & 1U) != 0; }
  constexpr void add(Cell cell) { words_[cell.index >> 6] |= bit(cell); }
  constexpr void remove(Cell cell) { words_[cell.index >> 6] &= ~bit(cell); }

  [[nodiscard]] constexpr int size() const {
    int total = 0;
    for (const std::uint64_t word : words_) total += std::popcount(word);
    return total;
  }
  [[nodiscard]] constexpr bool is_empty() const { return (words_[0] | words_[1] | words_[2] | words_[3]) == 0; }
  [[nodiscard]] constexpr bool is_subset_of(const CellSet& other) const { return (*this - other).is_empty(); }
  [[nodiscard]] constexpr bool meets(const CellSet& other) const { return !(*this & other).is_empty(); }
  // The first cell. Precondition: not empty.
  [[nodiscard]] constexpr Cell first() const {
    assert(!is_empty());
    int word = 0;
    while (words_[static_cast<std::size_t>(word)] == 0) ++word;
    return Cell(word * 64 + std::countr_zero(words_[static_cast<std::size_t>(word)]));
  }
  // Raw word 0..3 (cells 64*word ..), for code that packs sets tighter.
  [[nodiscard]] constexpr std::uint64_t word(int number) const { return words_[static_cast<std::size_t>(number)]; }
  static constexpr CellSet from_words(std::uint64_t w0, std::uint64_t w1, std::uint64_t w2 = 0, std::uint64_t w3 = 0) {
    CellSet set;
    set.words_ = {w0, w1, w2, w3};
    return set;
  }

  friend constexpr CellSet operator&(const CellSet& a, const CellSet& b) {
    CellSet set;
    for (std::size_t i = 0; i < kWords; ++i) set.words_[i] = a.words_[i] & b.words_[i];
    return set;
  }
  friend constexpr CellSet operator|(const CellSet& a, const CellSet& b) {
    CellSet set;
    for (std::size_t i = 0; i < kWords; ++i) set.words_[i] = a.words_[i] | b.words_[i];
    return set;
  }
  // Cells of a that are not in b.
  friend constexpr CellSet operator-(const CellSet& a, const CellSet& b) {
    CellSet set;
    for (std::size_t i = 0; i < kWords; ++i) set.words_[i] = a.words_[i] & ~b.words_[i];
    return set;
  }
  constexpr CellSet& operator|=(const CellSet& other) { return *this = *this | other; }
  constexpr CellSet& operator&=(const CellSet& other) { return *this = *this & other; }
  constexpr CellSet& operator-=(const CellSet& other) { return *this = *this - other; }
  friend constexpr bool operator==(const CellSet&, const CellSet&) = default;

  class Iterator {
   public:
    constexpr Iterator(const CellSet* set, int word) : set_(set), word_(word) {
      if (word_ < kWords) {
        left_ = set_->word(word_);
        settle();
      }
    }
    constexpr Cell operator*() const { return Cell(word_ * 64 + std::countr_zero(left_)); }
    constexpr Iterator& operator++() {
      left_ &= left_ - 1;
      settle();
      return *this;
    }
    friend constexpr bool operator==(const Iterator& a, const Iterator& b) { return a.word_ == b.word_ && a.left_ == b.left_; }

   private:
    constexpr void settle() {
      while (left_ == 0 && ++word_ < kWords) left_ = set_->word(word_);
    }
    const CellSet* set_;
    int word_;
    std::uint64_t left_ = 0;
  };
  [[nodiscard]] constexpr Iterator begin() const { return {this, 0}; }
  [[nodiscard]] constexpr Iterator end() const { return {this, kWords}; }

 private:
  static constexpr std::uint64_t bit(Cell cell) { return std::uint64_t{1} << (cell.index & 63U); }

  std::array<std::uint64_t, kWords> words_{};
};

}  // namespace cp
