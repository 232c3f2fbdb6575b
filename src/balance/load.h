// SPDX-License-Identifier: Apache-2.0
// How much a person must hold in the head to follow a balance, and what in the layout points at it.
// Our own measure, shown in parts; docs/formats/weigh.md explains it with an example.
#pragma once

#include "balance/infer.h"

namespace cp {

// Each part is a plain count of things to keep in mind; total() is their sum.
struct Load {
  int houses = 0;   // houses in the pans, with their weights
  int cells = 0;    // open cells of both remainders
  int shares = 0;   // 2 for every digit whose share is forced and has to be remembered
  int lemmas = 0;   // 1 for every lemma
  int cases = 0;    // 4 for every case after the first
  int search = 0;   // 60 when only exhaustive search shows it

  [[nodiscard]] int total() const { return houses + cells + shares + lemmas + cases + search; }
};

Load load_of(const Weighing& weighing, const BalanceReason& reason);

// Where the givens stand. `hint` is 0..6: how many givens more than an even spread one of the three regions holds.
struct Pointing {
  int left_cells = 0, left_givens = 0;
  int right_cells = 0, right_givens = 0;
  int cancelled_cells = 0, cancelled_givens = 0;
  enum class Region : std::uint8_t { kNone, kLeft, kRight, kCancelled } region = Region::kNone;  // the one that stands out
  int hint = 0;
};

inline constexpr int kMostHint = 6;

// How many givens more than an even spread a region holds, in whole givens (towards 0).
inline int givens_above_even(int cells, int givens, int all_cells, int all_givens) {
  return (givens * all_cells - cells * all_givens) / all_cells;
}

Pointing pointing_of(const Position& position, const Weighing& weighing);

// What ranks balances: load minus hint; smaller is better.
inline int rank_key(const Load& load, const Pointing& pointing) { return load.total() - pointing.hint; }

}  // namespace cp
