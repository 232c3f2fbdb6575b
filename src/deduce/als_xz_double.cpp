// SPDX-License-Identifier: Apache-2.0
// Two almost locked sets joined twice: for X, and for Y as well, the cells of one set all see those of the other. The sets
// have two digits more than cells, and X and Y fit once each into both sets together: no other digit can be missing. So
// X and Y are in one set each, every other digit of a set is in that set, and each falls wherever all its cells are seen.
// Reason: one sum over the cells of both sets, as many as the digits they need.
// Sets of up to four cells; the two share no cell and do not lie in one house (that is a naked subset).
// Cost: all pairs of sets. Equal conclusions once.
#include <array>
#include <utility>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/locked_pattern.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "als-xz-double";

class DoubleSearch {
 public:
  DoubleSearch(const Position& position, StepSink& sink) : position_(position), sink_(sink), sets_(deduce::almost_locked_sets(position)) {
    for (const deduce::AlmostLockedSet& set : sets_) {
      seeing_.emplace_back();
      for (const Digit digit : set.digits) seeing_.back()[digit.index] = position.shape().common_peers(position.places(digit) & set.cells);
    }
  }

  void run() {
    for (std::size_t j = 0; j < sets_.size(); ++j) {
      for (std::size_t i = 0; i < j; ++i) {
        const bool may_join = (sets_[i].digits & sets_[j].digits).size() >= 2 && !sets_[i].cells.meets(sets_[j].cells);
        if (may_join && !join(i, j)) return;
      }
    }
  }

 private:
  // Is the digit in one of the two sets at most?
  [[nodiscard]] bool is_restricted(std::size_t i, std::size_t j, Digit digit) const {
    return (position_.places(digit) & sets_[j].cells).is_subset_of(seeing_[i][digit.index]);
  }

  bool join(std::size_t i, std::size_t j) {
    const bool is_subset = deduce::house_around(position_.shape(), sets_[i].cells | sets_[j].cells).has_value();
    if (is_subset && !deduce::is_weakened(kId, deduce::Guard::kTrueSize)) return true;
    DigitSet restricted;
    const DigitSet common = sets_[i].digits & sets_[j].digits;
    for (const Digit digit : common) {
      if (is_restricted(i, j, digit)) restricted.add(digit);
    }
    if (deduce::is_weakened(kId, deduce::Guard::kSound) && restricted.size() == 1) return report(i, j, restricted);
    for (const Digit x : restricted) {
      for (const Digit y : restricted) {
        if (x < y && !report(i, j, DigitSet::of(x) | DigitSet::of(y))) return false;
      }
    }
    return true;
  }

  [[nodiscard]] bool strikes_nothing(std::size_t i, std::size_t j, DigitSet shared) const {
    CellSet struck;
    for (const Digit digit : sets_[i].digits - shared) struck |= position_.places(digit) & seeing_[i][digit.index];
    for (const Digit digit : sets_[j].digits - shared) struck |= position_.places(digit) & seeing_[j][digit.index];
    for (const Digit digit : shared) struck |= position_.places(digit) & seeing_[i][digit.index] & seeing_[j][digit.index];
    return struck.is_empty();
  }

  bool report(std::size_t i, std::size_t j, DigitSet shared) {
    if (strikes_nothing(i, j, shared)) return true;
    std::vector<Cell> cells;
    std::vector<deduce::Need> needs;
    for (const std::size_t number : {i, j}) {
      const deduce::AlmostLockedSet& set = sets_[number];
      for (const Cell cell : set.cells) cells.push_back(cell);
      for (const Digit digit : set.digits - shared) needs.push_back({digit, position_.places(digit) & set.cells});
    }
    for (const Digit digit : shared) needs.push_back({digit, position_.places(digit) & (sets_[i].cells | sets_[j].cells)});
    Step step = deduce::locked_pattern_step(kId, position_, cells, needs);
    return step.eliminations.empty() || !reported_.is_new(step.eliminations) || sink_.take(std::move(step));
  }

  const Position& position_;
  StepSink& sink_;
  std::vector<deduce::AlmostLockedSet> sets_;
  std::vector<std::array<CellSet, kMaxSide>> seeing_;  // per set and digit: what sees all its cells for the digit
  deduce::Reported reported_;
};

}  // namespace

void als_xz_double(const Position& position, StepSink& sink) { DoubleSearch(position, sink).run(); }

}  // namespace cp::techniques
