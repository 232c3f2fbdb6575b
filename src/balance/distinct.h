// SPDX-License-Identifier: Apache-2.0
// All distinct balances of a position up to a raw slack: every pair of sides is weighed, and pairs that leave the same
// open cells (up to swapping the pans) are one balance, kept with the fewest houses.
#pragma once

#include <cstdint>
#include <vector>

#include "balance/sides.h"

namespace cp {

struct DistinctBalance {
  TwoWords left;            // open cells of the two remainders
  TwoWords right;
  DigitBytes tally = {};
  std::uint32_t left_houses = 0;
  std::uint32_t right_houses = 0;
  std::int16_t slack = 0;
  std::int16_t house_count = 0;
};

inline constexpr int kAnyHouses = 99;  // more than a shape has

class DistinctBalances {
 public:
  // Weighs all pairs. Sides that weigh the same are taken together, and complementary pairs, which say the same, once;
  // what is left is at most 3.8 million subtractions on a 9x9 grid. Order of the result is that of first meeting, the same on every machine.
  // With `most_houses` only balances that can be named with so few; these are the same as among all, by the same names.
  DistinctBalances(const Position& position, int most_slack, int most_houses = kAnyHouses);

  [[nodiscard]] const std::vector<DistinctBalance>& all() const { return balances_; }
  // Pairs of sides covered, and how many pairs of classes stayed within the slack (complementary pairs counted once).
  [[nodiscard]] std::uint64_t scanned() const { return scanned_; }
  [[nodiscard]] std::uint64_t passed() const { return passed_; }
  // True when a balance showed the position impossible (more copies needed than cells are there).
  [[nodiscard]] bool is_impossible() const { return impossible_; }
  // Is there a distinct balance with these open cells, whichever way round?
  [[nodiscard]] bool has(TwoWords left, TwoWords right) const;

 private:
  // Open addressing; `number` is the place in balances_ plus one, 0 when the slot is free.
  struct Slot {
    std::uint32_t tag = 0;
    std::uint32_t number = 0;
  };
  struct Waiting {
    DistinctBalance balance;
    std::uint64_t hash = 0;
  };
  void wait(const DistinctBalance& balance);
  void meet_waiting();
  void meet(const DistinctBalance& balance, std::uint64_t hash);
  [[nodiscard]] std::size_t slot_of(TwoWords left, TwoWords right, std::uint64_t hash) const;
  void grow();

  std::vector<DistinctBalance> balances_;
  std::vector<Slot> slots_;
  std::array<Waiting, 32> waiting_{};
  std::size_t waiting_count_ = 0;
  std::uint64_t scanned_ = 0;
  std::uint64_t passed_ = 0;
  bool impossible_ = false;
};

}  // namespace cp
