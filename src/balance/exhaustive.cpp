// SPDX-License-Identifier: Apache-2.0
#include "balance/exhaustive.h"

#include <algorithm>

namespace cp {

namespace {

enum class Found : std::uint8_t { kYes, kNo, kLimit };

// Copies of one digit so far and still possible, on both sides, with multiplicity.
struct Tallying {
  int fixed_left = 0;
  int fixed_right = 0;
  int maybe_left = 0;
  int maybe_right = 0;
  [[nodiscard]] int difference() const { return fixed_left - fixed_right; }
};

class FillingSearch {
 public:
  using Masks = std::array<DigitSet, kMaxCells>;  // by cell index; only remainder cells are used

  FillingSearch(const Position& position, const Weighing& weighing, std::uint64_t node_limit)
      : weighing_(weighing), shape_(position.shape()), nodes_left_(node_limit),
        cells_(weighing.open_left | weighing.open_right) {
    for (const Cell cell : cells_) start_[cell.index] = position.candidates(cell);
    for (int i = 0; i < shape_.house_count(); ++i) {
      for (const Digit digit : shape_.digits()) {
        const CellSet places = position.places(House(i), digit);
        if (!places.is_empty() && places.is_subset_of(cells_)) musts_.push_back({places, digit});
      }
    }
  }

  [[nodiscard]] const CellSet& cells() const { return cells_; }
  [[nodiscard]] const Masks& filling() const { return filling_; }
  [[nodiscard]] std::uint64_t nodes() const { return nodes_; }

  Found any() { return search(start_); }

  // A filling that goes with the candidate.
  Found with(Candidate candidate) {
    Masks masks = start_;
    for (const Cell cell : cells_ & shape_.peers(candidate.cell)) masks[cell.index].remove(candidate.digit);
    if (cells_.has(candidate.cell)) masks[candidate.cell.index] = DigitSet::of(candidate.digit);
    return search(masks);
  }

 private:
  struct Must {
    CellSet places;
    Digit digit;
  };

  Found search(const Masks& masks) {
    return descend(masks, CellSet{});
  }

  Found descend(Masks masks, CellSet fixed) {
    if (nodes_left_ == 0) return Found::kLimit;
    --nodes_left_;
    ++nodes_;
    if (!propagate(masks, fixed)) return Found::kNo;
    const CellSet open = cells_ - fixed;
    if (open.is_empty()) {
      filling_ = masks;
      return Found::kYes;
    }
    return branch(masks, fixed, open);
  }

  Found branch(const Masks& masks, const CellSet& fixed, const CellSet& open) {
    Cell best_cell = open.first();
    int best = kMaxSide + 1;
    for (const Cell cell : open) {
      const int size = masks[cell.index].size();
      if (size < best) {
        best = size;
        best_cell = cell;
      }
    }
    const Must* best_must = nullptr;
    CellSet must_places;
    for (const Must& must : musts_) {
      const CellSet places = live_places(masks, must);
      const int size = places.size();
      if (size > 1 && size < best) {
        best = size;
        best_must = &must;
        must_places = places;
      }
    }
    bool limited = false;
    const auto attempt = [&](Cell cell, Digit digit) {
      Masks next = masks;
      next[cell.index] = DigitSet::of(digit);
      const Found found = descend(next, fixed);
      limited = limited || found == Found::kLimit;
      return found == Found::kYes;
    };
    if (best_must != nullptr) {
      for (const Cell cell : must_places) {
        if (attempt(cell, best_must->digit)) return Found::kYes;
      }
    } else {
      for (const Digit digit : masks[best_cell.index]) {
        if (attempt(best_cell, digit)) return Found::kYes;
      }
    }
    return limited ? Found::kLimit : Found::kNo;
  }

  static CellSet live_places(const Masks& masks, const Must& must) {
    CellSet places;
    for (const Cell cell : must.places) {
      if (masks[cell.index].has(must.digit)) places.add(cell);
    }
    return places;
  }

  // Rules to their fixpoint; false when the node dies.
  bool propagate(Masks& masks, CellSet& fixed) const {
    bool moved = true;
    while (moved) {
      moved = false;
      if (!fix_singles(masks, fixed, moved) || !meet_musts(masks, moved) || !meet_tally(masks, fixed, moved)) return false;
    }
    return true;
  }

  bool fix_singles(Masks& masks, CellSet& fixed, bool& moved) const {
    for (const Cell cell : cells_ - fixed) {
      const DigitSet mask = masks[cell.index];
      if (mask.is_empty()) return false;
      if (mask.size() > 1) continue;
      fixed.add(cell);
      moved = true;
      for (const Cell peer : cells_ & shape_.peers(cell)) masks[peer.index].remove(mask.lowest());
    }
    return true;
  }

  bool meet_musts(Masks& masks, bool& moved) const {
    for (const Must& must : musts_) {
      const CellSet places = live_places(masks, must);
      if (places.is_empty()) return false;
      if (places.size() == 1 && masks[places.first().index].size() > 1) {
        masks[places.first().index] = DigitSet::of(must.digit);
        moved = true;
      }
    }
    return true;
  }

  [[nodiscard]] std::array<Tallying, kMaxSide> tally(const Masks& masks, const CellSet& fixed) const {
    std::array<Tallying, kMaxSide> tallies{};
    for (const Cell cell : cells_) {
      const int units = weighing_.layers.empty() ? 1 : weighing_.multiplicity(cell);
      const bool left = weighing_.open_left.has(cell);
      for (const Digit digit : masks[cell.index]) {
        Tallying& of = tallies[digit.index];
        if (fixed.has(cell)) (left ? of.fixed_left : of.fixed_right) += units;
        else (left ? of.maybe_left : of.maybe_right) += units;
      }
    }
    return tallies;
  }

  bool meet_tally(Masks& masks, const CellSet& fixed, bool& moved) const {
    const auto tallies = tally(masks, fixed);
    int asked_left = 0;
    int asked_right = 0;
    DigitSet wanted_left;
    DigitSet wanted_right;
    for (const Digit digit : shape_.digits()) {
      const Tallying& of = tallies[digit.index];
      const int missing = weighing_.tally[digit.index] - of.difference();  // > 0: left needs more, < 0: right does
      if (of.maybe_left < missing || of.maybe_right < -missing) return false;
      if (of.maybe_left > 0 && of.maybe_right > 0) {
        // Every left place is needed, so the right may not take the digit (and the other way round).
        if (of.maybe_left == missing) strike(masks, weighing_.open_right - fixed, digit, moved);
        if (of.maybe_right == -missing) strike(masks, weighing_.open_left - fixed, digit, moved);
      }
      if (missing > 0) {
        asked_left += missing;
        wanted_left.add(digit);
      } else if (missing < 0) {
        asked_right -= missing;
        wanted_right.add(digit);
      }
    }
    return meet_units(masks, weighing_.open_left - fixed, asked_left, wanted_left, moved) &&
           meet_units(masks, weighing_.open_right - fixed, asked_right, wanted_right, moved);
  }

  // The open cells of one side must take at least the digits still asked for.
  bool meet_units(Masks& masks, const CellSet& open, int asked, DigitSet wanted, bool& moved) const {
    const int units = weighing_.units(open);
    if (asked > units) return false;
    if (asked < units) return true;
    for (const Cell cell : open) {
      if (masks[cell.index].is_subset_of(wanted)) continue;
      masks[cell.index] &= wanted;
      moved = true;
    }
    return true;
  }

  static void strike(Masks& masks, const CellSet& cells, Digit digit, bool& moved) {
    for (const Cell cell : cells) {
      if (!masks[cell.index].has(digit)) continue;
      masks[cell.index].remove(digit);
      moved = true;
    }
  }

  const Weighing& weighing_;
  const Shape& shape_;
  std::uint64_t nodes_left_;  // of all searches together
  std::uint64_t nodes_ = 0;
  CellSet cells_;
  Masks start_{};
  Masks filling_{};
  std::vector<Must> musts_;
};

// Candidates not yet seen to go with a filling, by digit.
using Doubtful = std::array<CellSet, kMaxSide>;

Doubtful all_doubtful(const Position& position, const CellSet& cells) {
  Doubtful doubtful{};
  for (const Digit digit : position.shape().digits()) {
    const CellSet inside = position.places(digit) & cells;
    for (const Cell cell : position.places(digit)) {
      if (cells.has(cell) || inside.meets(position.shape().peers(cell))) doubtful[digit.index].add(cell);
    }
  }
  return doubtful;
}

// Clears the doubt about all that goes with one filling.
void clear_with(const FillingSearch& search, const Shape& shape, Doubtful& doubtful) {
  for (const Digit digit : shape.digits()) {
    CellSet holding;
    CellSet seen;
    for (const Cell cell : search.cells()) {
      if (!search.filling()[cell.index].has(digit)) continue;
      holding.add(cell);
      seen |= shape.peers(cell);
    }
    doubtful[digit.index] &= (search.cells() - holding) | (seen - search.cells());
  }
}

}  // namespace

Fillings all_fillings(const Position& position, const Weighing& weighing, std::uint64_t node_limit) {
  Fillings fillings;
  FillingSearch search(position, weighing, node_limit);
  Doubtful doubtful = all_doubtful(position, search.cells());
  const Found first = search.any();
  fillings.is_impossible = first == Found::kNo;
  fillings.is_complete = first != Found::kLimit;
  if (first == Found::kYes) clear_with(search, position.shape(), doubtful);
  for (const Digit digit : position.shape().digits()) {
    if (fillings.is_impossible) break;
    while (!doubtful[digit.index].is_empty()) {
      const Candidate candidate{doubtful[digit.index].first(), digit};
      const Found found = search.with(candidate);
      if (found == Found::kYes) clear_with(search, position.shape(), doubtful);
      if (found == Found::kNo) fillings.fallen.push_back(candidate);
      if (found == Found::kLimit) fillings.is_complete = false;
      doubtful[digit.index].remove(candidate.cell);
    }
  }
  std::sort(fillings.fallen.begin(), fillings.fallen.end());
  fillings.nodes = search.nodes();
  return fillings;
}

}  // namespace cp
