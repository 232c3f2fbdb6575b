// SPDX-License-Identifier: Apache-2.0
// One case of a balance: every digit has its exact number of copies in each pan. What follows is said in lemmas
// (step/balance_reason.h). Sources: counting is the Hall condition behind the global cardinality constraint
// (J.-C. Regin, AAAI 1996); covers are the argument of fish; sight is the argument of a fin.
#pragma once

#include "balance/forced_shares.h"
#include "balance/weighing.h"

namespace cp {

// How far lemmas are looked for; part of the definition of levels 3 and 4.
inline constexpr int kMostCoverHouses = 4;  // covers of more houses are not tried
inline constexpr int kMostSightHouses = 1;  // sight lemmas leave at most this many houses for the rest

enum class Depth : std::uint8_t {
  kCountOnce,  // levels 1 and 2: the digits that a pan does not hold leave it, nothing further
  kFull,       // levels 3 and 4: all lemmas to their fixpoint
};

class CaseSolver {
 public:
  // Keeps references; both must outlive the solver.
  CaseSolver(const Position& position, const Weighing& weighing);

  // Works the case out from scratch. `shares[d]` copies of d are in both pans beyond what the tally asks.
  // Afterwards removed() tells what the case strikes out, by digit.
  void run(const DigitCounts& shares, Depth depth);

  [[nodiscard]] bool is_impossible() const { return impossible_; }
  // Candidates struck out, by digit; complete only when the case is possible.
  [[nodiscard]] const std::array<CellSet, kMaxSide>& removed() const { return removed_; }
  // What was said, in order. Only kept when recording is on.
  [[nodiscard]] const std::vector<Lemma>& lemmas() const { return lemmas_; }
  void set_recording(bool on) { recording_ = on; }

  // Starts the case and replays given lemmas, leaving out number `skip`; what each strikes out is worked out anew, and
  // one that says nothing any more is passed over. Used to drop lemmas that are not needed.
  void replay(const DigitCounts& shares, const std::vector<Lemma>& lemmas, std::size_t skip);

 private:
  void start(const DigitCounts& shares);
  bool count_once(Pan pan);
  bool count_all(Pan pan);
  [[nodiscard]] bool meets_others(const CellSet& cells, DigitSet digits) const;
  bool cover_all();
  bool cover_digit(Pan pan, Digit digit);
  bool search_cover(const CellSet& left_over, int budget, int used);
  bool sight_all();
  bool sight_digit(Pan pan, Digit digit);
  bool apply_count(Pan pan, DigitSet digits);
  bool apply_cover(Pan pan, Digit digit, const std::vector<House>& houses);
  bool apply_sight(Pan pan, Digit digit, const std::vector<House>& houses);
  bool remove(const CellSet& cells, Digit digit, std::vector<Candidate>& removed);
  bool finish(Lemma lemma, bool impossible);
  [[nodiscard]] const CellSet& pan_cells(Pan pan) const;
  [[nodiscard]] CellSet places(Pan pan, Digit digit) const { return live_[digit.index] & pan_cells(pan); }
  [[nodiscard]] int needed(Pan pan, Digit digit) const;
  [[nodiscard]] int bound(House house, const CellSet& places) const;

  const Position& position_;
  const Weighing& weighing_;
  const Shape& shape_;
  CellSet both_;
  DigitCounts left_{};   // copies in the open left cells, exactly
  DigitCounts right_{};
  std::array<CellSet, kMaxSide> live_{};     // candidates left in this case, by digit, on the whole grid
  std::array<CellSet, kMaxSide> removed_{};
  std::vector<Lemma> lemmas_;
  bool impossible_ = false;
  bool recording_ = false;
  // The cover search in hand.
  Pan cover_pan_ = Pan::kLeft;
  Digit cover_digit_;
  CellSet cover_places_;
  std::array<House, kMostCoverHouses> cover_{};
  // Sets of digits in the count search, by bit mask over the digits that the pan holds.
  struct DigitsNeed {
    CellSet cells;  // cells that can take any of them
    int need = 0;   // copies needed
    DigitSet digits;
  };
  std::vector<DigitsNeed> sets_;
};

}  // namespace cp
