// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/aligned_exclusion.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>
#include <vector>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"

namespace cp::deduce {

namespace {

class AlignedSearch {
 public:
  AlignedSearch(std::string_view technique, const Position& position, StepSink& sink)
      : technique_(technique), position_(position), sink_(sink), sets_(almost_locked_sets(position)), words_((sets_.size() + 63) / 64) {
    const Shape& shape = position.shape();
    robbed_.resize(static_cast<std::size_t>(shape.cell_count() * shape.side()) * words_);
    for (std::size_t set = 0; set < sets_.size(); ++set) {
      for (const Digit digit : sets_[set].digits) {
        const CellSet robbers = shape.common_peers(position.places(digit) & sets_[set].cells) & position.places(digit);
        for (const Cell cell : robbers) robbed_[start_of({cell, digit}) + set / 64] |= std::uint64_t{1} << (set % 64);
      }
    }
  }

  bool look_for_pair(Candidate supposed) {
    for (const Cell other : by_size(position_.open() & position_.shape().peers(supposed.cell))) {
      if (leaves_nothing(supposed, other)) return sink_.take(by_supposing_split(supposed, pair_cases(supposed, other)));
    }
    return true;
  }

  bool look_for_triple(Candidate supposed) {
    const CellSet peers = position_.open() & position_.shape().peers(supposed.cell);
    const std::vector<Cell> others = by_size(peers);
    if (!is_weakened(technique_, Guard::kTrueSize)) {
      for (const Cell other : others) {
        if (leaves_nothing(supposed, other)) return true;
      }
    }
    for (std::size_t j = 0; j < others.size(); ++j) {
      for (std::size_t i = 0; i < j; ++i) {
        const CellSet three = CellSet::of(supposed.cell) | CellSet::of(others[i]) | CellSet::of(others[j]);
        if (!position_.shape().peers(others[i]).has(others[j]) || !leaves_no_two(supposed, others[i], others[j])) continue;
        if (house_around(position_.shape(), three)) return sink_.take(by_supposing_split(supposed, triple_cases(supposed, others[i], others[j])));
      }
    }
    return true;
  }

 private:
  [[nodiscard]] std::size_t start_of(Candidate each) const {
    return static_cast<std::size_t>(each.cell.index * position_.shape().side() + each.digit.index) * words_;
  }
  // Open cells with two candidates or more, few candidates first.
  [[nodiscard]] std::vector<Cell> by_size(const CellSet& cells) const {
    const int fewest = is_weakened(technique_, Guard::kTrueSize) ? 1 : 2;
    std::vector<Cell> sorted;
    for (const Cell cell : cells) {
      if (position_.candidates(cell).size() >= fewest) sorted.push_back(cell);
    }
    std::stable_sort(sorted.begin(), sorted.end(), [&](Cell a, Cell b) { return position_.candidates(a).size() < position_.candidates(b).size(); });
    return sorted;
  }

  // The smallest set that loses two digits to two candidates, or the number of sets.
  [[nodiscard]] std::size_t common_set(Candidate one, Candidate other) const {
    if (one.digit == other.digit) return sets_.size();
    const std::size_t at_one = start_of(one), at_other = start_of(other);
    for (std::size_t word = 0; word < words_; ++word) {
      const std::uint64_t both = robbed_[at_one + word] & robbed_[at_other + word];
      if (both != 0) return word * 64 + static_cast<std::size_t>(std::countr_zero(both));
    }
    return sets_.size();
  }
  // For cells that see each other.
  [[nodiscard]] bool is_excluded(Candidate one, Candidate other) const { return one.digit == other.digit || common_set(one, other) < sets_.size(); }
  // A cell whose three candidates are these digits and that sees all three cells.
  [[nodiscard]] CellSet emptied_cells(Candidate one, Candidate other, Candidate third) const {
    const Shape& shape = position_.shape();
    CellSet cells = shape.peers(one.cell) & shape.peers(other.cell) & shape.peers(third.cell);
    cells &= position_.places(one.digit) & position_.places(other.digit) & position_.places(third.digit);
    CellSet emptied;
    for (const Cell cell : cells) {
      if (position_.candidates(cell).size() == 3) emptied.add(cell);
    }
    return emptied;
  }

  [[nodiscard]] bool leaves_nothing(Candidate supposed, Cell other) const {
    int possible = is_weakened(technique_, Guard::kSound) ? -1 : 0;
    for (const Digit digit : position_.candidates(other)) possible += is_excluded(supposed, {other, digit}) ? 0 : 1;
    return possible <= 0;
  }
  [[nodiscard]] bool leaves_no_two(Candidate supposed, Cell one, Cell other) const {
    int possible = is_weakened(technique_, Guard::kSound) ? -1 : 0;
    for (const Digit first : position_.candidates(one)) {
      if (is_excluded(supposed, {one, first})) continue;
      for (const Digit second : position_.candidates(other)) {
        if (is_excluded(supposed, {other, second}) || is_excluded({one, first}, {other, second})) continue;
        if (emptied_cells(supposed, {one, first}, {other, second}).is_empty() && ++possible > 0) return false;
      }
    }
    return possible <= 0;
  }

  // The set that loses two digits can not be filled.
  [[nodiscard]] Argument set_breaks(Candidate one, Candidate other) const {
    SumOfSets sum;
    sum.add_set(sets_[common_set(one, other)], DigitSet::of(one.digit) | DigitSet::of(other.digit));
    return {{{sum.terms()}}, {}, {}};
  }
  [[nodiscard]] Argument pair_cases(Candidate supposed, Cell other) const {
    Argument argument{{}, Constraint::of(other), {}};
    for (const Digit digit : position_.candidates(other) - DigitSet::of(supposed.digit)) {
      const bool breaks = is_excluded(supposed, {other, digit});
      argument.cases.push_back(breaks ? set_breaks(supposed, {other, digit}) : Argument{});
    }
    return argument;
  }
  [[nodiscard]] Argument triple_cases(Candidate supposed, Cell one, Cell other) const {
    Argument argument{{}, Constraint::of(one), {}};
    for (const Digit first : position_.candidates(one) - DigitSet::of(supposed.digit)) {
      const Candidate middle{one, first};
      if (is_excluded(supposed, middle)) {
        argument.cases.push_back(set_breaks(supposed, middle));
        continue;
      }
      Argument inner{{}, Constraint::of(other), {}};
      for (const Digit second : position_.candidates(other) - DigitSet::of(supposed.digit) - DigitSet::of(first)) {
        const Candidate last{other, second};
        if (is_excluded(supposed, last)) inner.cases.push_back(set_breaks(supposed, last));
        else if (is_excluded(middle, last)) inner.cases.push_back(set_breaks(middle, last));
        else if (const CellSet emptied = emptied_cells(supposed, middle, last); !emptied.is_empty()) inner.cases.push_back({{lone(Constraint::of(emptied.first()))}, {}, {}});
        else inner.cases.push_back({});
      }
      argument.cases.push_back(std::move(inner));
    }
    return argument;
  }
  [[nodiscard]] Step by_supposing_split(Candidate supposed, Argument argument) const {
    return {technique_, {}, {supposed}, ArgumentReason{true, {}, std::move(argument)}};
  }

  std::string_view technique_;
  const Position& position_;
  StepSink& sink_;
  std::vector<AlmostLockedSet> sets_;
  std::size_t words_;
  std::vector<std::uint64_t> robbed_;  // per candidate: the sets that lose its digit when it is true, as bits
};

}  // namespace

void find_aligned_pairs(std::string_view technique, const Position& position, StepSink& sink) {
  AlignedSearch search(technique, position, sink);
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) {
      if (!search.look_for_pair({cell, digit})) return;
    }
  }
}

void find_aligned_triples(std::string_view technique, const Position& position, StepSink& sink) {
  AlignedSearch search(technique, position, sink);
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) {
      if (!search.look_for_triple({cell, digit})) return;
    }
  }
}

}  // namespace cp::deduce
