// SPDX-License-Identifier: Apache-2.0
// Replays the lemmas of one case of a balance. Each lemma is judged by itself, on what the lemmas before it left.
#pragma once

#include "verify/balance_check.h"

namespace cp {

class CaseCheck {
 public:
  // Starts the case in which pan copies of every digit are exact: tally plus shares.
  CaseCheck(const Position& before, const Reweighed& reweighed, const DigitCounts& shares);

  // Does the lemma follow? Then its removals are carried out. `breaks` is set when it shows the case impossible.
  CheckResult take(const Lemma& lemma, bool& breaks);
  // Has the case struck this candidate out?
  [[nodiscard]] bool has_removed(const Candidate& candidate) const;
  // Do the pans have room for the copies at all?
  [[nodiscard]] bool has_room() const;

 private:
  CheckResult take_count(const Lemma& lemma, bool& breaks);
  CheckResult take_cover(const Lemma& lemma, bool& breaks);
  CheckResult take_sight(const Lemma& lemma);
  [[nodiscard]] bool is_live(Cell cell, Digit digit) const;
  [[nodiscard]] int units_in(Pan pan, Cell cell) const;
  [[nodiscard]] int needed(Pan pan, Digit digit) const;
  [[nodiscard]] int heaviest(Pan pan, House house, Digit digit, const CellSet& among) const;
  [[nodiscard]] CellSet places(Pan pan, Digit digit) const;

  const Position& before_;
  const Reweighed& reweighed_;
  const Shape& shape_;
  DigitCounts left_{};
  DigitCounts right_{};
  std::array<CellSet, kMaxSide> removed_{};
};

}  // namespace cp
