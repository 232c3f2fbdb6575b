// SPDX-License-Identifier: Apache-2.0
// Could this balance say anything? A fast test for the finder on 9x9 grids. It may say yes for a balance that proves
// nothing, never no for one that proves something at levels 1-4 (tests compare it with infer() on every balance).
#pragma once

#include "balance/distinct.h"

namespace cp {

// A set of cells of a 9x9 grid as three bands of 27 bits (the fourth lane stays 0).
typedef std::uint32_t Bands __attribute__((vector_size(16)));

class QuickLook {
 public:
  // Precondition: the shape is 9x9.
  explicit QuickLook(const Position& position);

  struct Answer {
    int free_slack = 0;     // the same as Inference::free_slack, unless the position is impossible
    int forced_digits = 0;  // digits with a forced share
    int cases = 1;          // ways to share one free copy; 1 when the free slack is 0, not worked out when it is 2
    bool may_say = false;   // worth working through; always true when free_slack is negative
  };
  // Answers with may_say = false when the free slack exceeds `most_free_slack` (which is at most 2; for 2 every
  // balance with that much is worth working through).
  [[nodiscard]] Answer look(const DistinctBalance& balance, int most_free_slack);

 private:
  // What is known of one digit in one region: its places there decide everything about it, and the same places come up
  // in very many balances.
  struct Region {
    Bands key = {};                 // the places; the fourth lane holds the digit plus one
    std::uint16_t asked = 0;        // bit n: it has been worked out whether n copies say something
    std::uint16_t speaks = 0;       // bit n: they do
    std::int16_t forced_copies = 0; // copies that are sure to fall into the region
  };
  // The balance in hand.
  struct Hand {
    Bands open_left{};
    Bands open_right{};
    std::array<Bands, 9> left{};   // places by digit in the open left cells
    std::array<Bands, 9> right{};
    std::array<int, 9> need_left{};  // copies known to be there: tally and forced shares
    std::array<int, 9> need_right{};
    std::array<int, 9> room{};       // further copies that both pans have places for
  };
  Region& region(int digit, Bands places);
  void grow();
  [[nodiscard]] std::size_t first_slot(Bands key) const;
  [[nodiscard]] std::size_t slot_of(Bands key) const;
  void fetch_early(int digit, Bands places) const;  // asks for the memory that region() will look at
  int forced_least(const Hand& hand, int digit);
  [[nodiscard]] int forced_copies(int digit, Bands inside) const;
  [[nodiscard]] bool pan_speaks(Bands cells, const std::array<int, 9>& need) const;
  bool exact_speaks(const Hand& hand);
  bool cases_speak(const Hand& hand);
  bool houses_speak(const Hand& hand, int digit, int more);
  bool one_pan_speaks(int digit, Bands inside, int need);
  [[nodiscard]] bool works_out(int digit, Bands inside, int need) const;
  // Houses chosen so far to cover the places of a digit.
  struct Cover {
    Bands rest;   // places not covered yet
    Bands cells;  // cells of the houses
    Bands twice;  // places in two of them
  };
  [[nodiscard]] bool cover_speaks(int digit, Bands inside, const Cover& cover, int budget) const;
  [[nodiscard]] bool sight_speaks(int digit, Bands inside, int need) const;
  [[nodiscard]] bool is_in_one_house(Bands cells) const;
  [[nodiscard]] int independent_size(Bands cells, int enough) const;

  std::vector<Region> regions_;  // open addressing; free slots have an empty key
  std::size_t region_count_ = 0;
  std::array<Bands, 9> places_{};
  std::array<std::uint16_t, 81> candidates_{};  // by cell: bit per digit
  std::array<std::uint32_t, 9> houses_with_{};  // by digit: bit per house that has a place for it
  std::array<Bands, 27> house_cells_{};
  std::array<Bands, 81> peers_{};
  std::array<Bands, 81> self_{};  // each cell as a set
};

}  // namespace cp
