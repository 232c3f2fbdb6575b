// SPDX-License-Identifier: Apache-2.0
#include "verify/filling_check.h"

#include <algorithm>
#include <vector>

namespace cp {

namespace {

// Plain backtracking over a list of cells, fewest digits first. Prunes only by what is counted so far.
class PlainFilling {
 public:
  PlainFilling(const Position& before, const Reweighed& reweighed, const Candidate& candidate, std::uint64_t node_limit)
      : shape_(before.shape()), reweighed_(reweighed), nodes_left_(node_limit) {
    for (const Cell cell : shape_.all_cells()) {
      if (reweighed.units[cell.index] == 0) continue;
      cells_.add(cell);
      options_[cell.index] = before.candidates(cell);
      if (shape_.peers(candidate.cell).has(cell)) options_[cell.index].remove(candidate.digit);
      if (cell == candidate.cell) options_[cell.index] = DigitSet::of(candidate.digit);
    }
    for (int i = 0; i < shape_.house_count(); ++i) {
      for (const Digit digit : shape_.digits()) {
        const CellSet places = before.places(House(i), digit);
        if (!places.is_empty() && places.is_subset_of(cells_)) musts_.push_back({places, digit});
      }
    }
  }

  // 1: a filling exists; 0: none; -1: the limit was reached.
  int search() { return descend(options_, cells_); }

 private:
  using Options = std::array<DigitSet, kMaxCells>;
  struct Must {
    CellSet places;
    Digit digit;
  };

  int descend(const Options& options, CellSet open) {
    if (nodes_left_ == 0) return -1;
    --nodes_left_;
    if (!can_balance(options, open) || !can_meet_musts(options)) return 0;
    if (open.is_empty()) return 1;
    Cell cell = open.first();
    for (const Cell other : open) {
      if (options[other.index].size() < options[cell.index].size()) cell = other;
    }
    open.remove(cell);
    for (const Digit digit : options[cell.index]) {
      Options next = options;
      next[cell.index] = DigitSet::of(digit);
      for (const Cell peer : shape_.peers(cell)) next[peer.index].remove(digit);
      const int found = descend(next, open);
      if (found != 0) return found;
    }
    return 0;
  }

  // Can the tally still come out? `open` cells are not decided yet.
  [[nodiscard]] bool can_balance(const Options& options, const CellSet& open) const {
    int asked_left = 0;
    int asked_right = 0;
    int open_left = 0;
    int open_right = 0;
    for (const Cell cell : open) (reweighed_.units[cell.index] > 0 ? open_left : open_right) += std::abs(reweighed_.units[cell.index]);
    for (const Digit digit : shape_.digits()) {
      int missing = reweighed_.tally[digit.index];
      int most_left = 0;
      int most_right = 0;
      for (const Cell cell : cells_) {
        const int units = reweighed_.units[cell.index];
        if (!options[cell.index].has(digit)) continue;
        if (!open.has(cell)) missing -= units;
        else (units > 0 ? most_left : most_right) += std::abs(units);
      }
      if (missing > most_left || -missing > most_right) return false;
      asked_left += std::max(missing, 0);
      asked_right += std::max(-missing, 0);
    }
    return asked_left <= open_left && asked_right <= open_right;
  }

  [[nodiscard]] bool can_meet_musts(const Options& options) const {
    return std::all_of(musts_.begin(), musts_.end(), [&](const Must& must) {
      for (const Cell cell : must.places) {
        if (options[cell.index].has(must.digit)) return true;
      }
      return false;
    });
  }

  const Shape& shape_;
  const Reweighed& reweighed_;
  std::uint64_t nodes_left_;
  CellSet cells_;
  Options options_{};
  std::vector<Must> musts_;
};

}  // namespace

CheckResult check_no_filling(const Position& before, const Reweighed& reweighed, const Candidate& candidate, std::uint64_t node_limit) {
  const int found = PlainFilling(before, reweighed, candidate, node_limit).search();
  if (found == 1) return CheckResult::no("a filling keeps an eliminated candidate");
  if (found < 0) return CheckResult::no("the search for a filling reached its limit");
  return CheckResult::yes();
}

}  // namespace cp
