// SPDX-License-Identifier: Apache-2.0
// The one search behind locked sets and fish. Given masks (say, the candidates of each open cell of a house), a group
// of k of them is tight when together they have exactly k bits: k cells for k digits. Then those bits are used up
// inside the group (P. Hall 1935; for grids: J. F. Crook, Notices AMS 56(4), 2009, "preemptive sets").
//
// Only true sizes count: a group that contains a smaller tight group (a single candidate, a pair inside a triple) is
// passed over, because the smaller one does its work and leaves a smaller rest.
#pragma once

#include <array>
#include <bit>
#include <span>
#include <string_view>

#include "deduce/detail/guard.h"
#include "deduce/detail/tables.h"

namespace cp::deduce {

// A found group: which masks (bit = index) and their union.
struct TightGroup {
  Mask members = 0;
  Mask bits = 0;
};

namespace tight {

inline constexpr int kLargest = 4;  // sizes above are complements of smaller groups on grids up to 9x9

// Searches groups of one size in lexicographic order of their members.
template <typename Visit>
class Search {
 public:
  // The technique is named for its guards only.
  Search(std::span<const Mask> masks, int size, std::string_view technique, Visit& visit)
      : masks_(masks),
        size_(size),
        most_bits_(is_weakened(technique, Guard::kSound) ? size + 1 : size),
        true_size_(!is_weakened(technique, Guard::kTrueSize)),
        visit_(visit) {}

  // False when a visit asked to stop.
  bool extend(std::size_t from, int depth, TightGroup group) {
    if (depth == size_) return std::popcount(group.bits) < size_ || (true_size_ && has_smaller_group()) || visit_(group);
    const int fewest_bits = true_size_ ? 2 : 1;
    for (std::size_t i = from; i < masks_.size(); ++i) {
      const Mask bits = static_cast<Mask>(group.bits | masks_[i]);
      if (std::popcount(masks_[i]) < fewest_bits || std::popcount(bits) > most_bits_) continue;
      chosen_[static_cast<std::size_t>(depth)] = masks_[i];
      if (!extend(i + 1, depth + 1, {static_cast<Mask>(group.members | (1U << i)), bits})) return false;
    }
    return true;
  }

 private:
  [[nodiscard]] bool has_smaller_group() const {
    const unsigned all = (1U << size_) - 1U;
    for (unsigned part = 1; part < all; ++part) {
      unsigned bits = 0;
      for (int i = 0; i < size_; ++i) bits |= ((part >> i) & 1U) != 0 ? chosen_[static_cast<std::size_t>(i)] : 0U;
      if (std::popcount(bits) <= std::popcount(part)) return true;
    }
    return false;
  }

  std::span<const Mask> masks_;
  int size_;
  int most_bits_;
  bool true_size_;
  Visit& visit_;
  std::array<Mask, kLargest> chosen_{};
};

}  // namespace tight

// Calls visit(TightGroup) -> bool for each tight group of that size; a false answer ends the search and is returned.
// Precondition: 2 <= size <= 4, at most 16 masks.
template <typename Visit>
bool for_each_tight_group(std::span<const Mask> masks, int size, std::string_view technique, Visit visit) {
  return tight::Search<Visit>(masks, size, technique, visit).extend(0, 0, {});
}

}  // namespace cp::deduce
