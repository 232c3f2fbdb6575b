// SPDX-License-Identifier: Apache-2.0
// Death blossom: a stem cell with three or more candidates, and for each of them a petal: an almost locked set whose cells
// for that candidate all see the stem. Whatever the stem holds, one petal loses that digit and holds all its others.
// So when every petal has Z, and a cell sees all the cells for Z of each petal, Z falls there. Z is no candidate of the stem.
// Reason: with Z supposed, the stem and the petals' cells together have one digit too few.
// Told once for each Z that falls, with the stem of fewest candidates. Petals of up to four cells; they may overlap or
// serve twice. A stem with two candidates is an ALS-XY-wing. Cost: per stem and Z, all sets.
#include <algorithm>
#include <array>
#include <utility>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "death-blossom";

class BlossomSearch {
 public:
  BlossomSearch(const Position& position, StepSink& sink) : position_(position), sink_(sink), sets_(deduce::almost_locked_sets(position)) {
    for (const deduce::AlmostLockedSet& set : sets_) {
      seeing_.emplace_back();
      for (const Digit digit : set.digits) seeing_.back()[digit.index] = position.shape().common_peers(position.places(digit) & set.cells);
    }
  }

  void run() {
    const int fewest = deduce::is_weakened(kId, deduce::Guard::kTrueSize) ? 2 : 3;
    for (int size = fewest; size <= position_.shape().side(); ++size) {
      for (const Cell stem : position_.open()) {
        if (position_.candidates(stem).size() == size && !look_at(stem)) return;
      }
    }
  }

 private:
  [[nodiscard]] bool is_petal(std::size_t set, Cell stem, Digit lost, Digit z) const {
    return sets_[set].digits.has(lost) && sets_[set].digits.has(z) && seeing_[set][lost.index].has(stem);
  }

  bool look_at(Cell stem) {
    std::array<std::vector<std::size_t>, kMaxSide> petals;  // per candidate of the stem
    for (const Digit lost : position_.candidates(stem)) {
      for (std::size_t set = 0; set < sets_.size(); ++set) {
        if (sets_[set].digits.has(lost) && seeing_[set][lost.index].has(stem)) petals[lost.index].push_back(set);
      }
      if (petals[lost.index].empty()) return true;
    }
    for (const Digit z : position_.shape().digits() - position_.candidates(stem)) {
      CellSet struck = position_.places(z);
      bool is_first = true;
      for (const Digit lost : position_.candidates(stem)) {
        if (std::exchange(is_first, false) && deduce::is_weakened(kId, deduce::Guard::kSound)) continue;
        CellSet seeing;
        for (const std::size_t set : petals[lost.index]) seeing |= seeing_[set][z.index];
        struck &= seeing;
      }
      for (const Cell cell : struck) {
        if (!report(stem, {cell, z})) return false;
      }
    }
    return true;
  }

  bool report(Cell stem, Candidate struck) {
    if (!reported_.is_new({struck})) return true;
    deduce::SumOfSets sum;
    sum.add_base(Constraint::of(stem));
    for (const Digit lost : position_.candidates(stem)) {
      for (std::size_t set = 0; set < sets_.size(); ++set) {
        if (!is_petal(set, stem, lost, struck.digit) || !seeing_[set][struck.digit.index].has(struck.cell)) continue;
        sum.add_set(sets_[set], DigitSet::of(lost) | DigitSet::of(struck.digit));
        CellSet both = position_.places(lost) & sets_[set].cells;
        both.add(stem);
        if (const auto house = deduce::house_around(position_.shape(), both)) sum.add_cover(*house, lost);
        break;
      }
    }
    return sink_.take(deduce::by_supposing(kId, {struck}, {{sum.terms()}}));
  }

  const Position& position_;
  StepSink& sink_;
  std::vector<deduce::AlmostLockedSet> sets_;
  std::vector<std::array<CellSet, kMaxSide>> seeing_;  // per set and digit: what sees all its cells for the digit
  deduce::Reported reported_;
};

}  // namespace

void death_blossom(const Position& position, StepSink& sink) { BlossomSearch(position, sink).run(); }

}  // namespace cp::techniques
