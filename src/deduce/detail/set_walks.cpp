// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/set_walks.h"

#include <array>
#include <bit>
#include <map>
#include <utility>

#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"

namespace cp::deduce {

namespace {

// A set of group numbers.
class Bits {
 public:
  explicit Bits(std::size_t count) : words_((count + 63) / 64) {}
  void add(std::size_t i) { words_[i >> 6] |= std::uint64_t{1} << (i & 63U); }
  [[nodiscard]] bool has(std::size_t i) const { return ((words_[i >> 6] >> (i & 63U)) & 1U) != 0; }
  void join(const Bits& other) {
    for (std::size_t w = 0; w < words_.size(); ++w) words_[w] |= other.words_[w];
  }
  void leave(const Bits& other) {
    for (std::size_t w = 0; w < words_.size(); ++w) words_[w] &= ~other.words_[w];
  }
  [[nodiscard]] bool is_empty() const {
    for (const std::uint64_t word : words_) {
      if (word != 0) return false;
    }
    return true;
  }
  template <typename Visit>
  void for_each(Visit visit) const {
    for (std::size_t w = 0; w < words_.size(); ++w) {
      for (std::uint64_t left = words_[w]; left != 0; left &= left - 1) visit(w * 64 + static_cast<std::size_t>(std::countr_zero(left)));
    }
  }

 private:
  std::vector<std::uint64_t> words_;
};

// The cells of a set for one digit.
struct Group {
  Digit digit;
  CellSet cells;
  CellSet seeing;  // what sees all of them
};

class WalkSearch {
 public:
  WalkSearch(std::string_view technique, int fewest, int most, const Position& position, StepSink& sink)
      : technique_(technique), fewest_(fewest), most_(most), position_(position), sink_(sink), sets_(almost_locked_sets(position)) {
    number_groups();
    locks_.assign(groups_.size(), Bits(groups_.size()));
    robs_.assign(groups_.size(), Bits(groups_.size()));
    for (const std::vector<std::size_t>& own : groups_of_) {
      for (const std::size_t lost : own) {
        for (const std::size_t kept : own) {
          if (kept != lost) locks_[lost].add(kept);
        }
      }
    }
    for (std::size_t i = 0; i < groups_.size(); ++i) {
      for (std::size_t j = 0; j < groups_.size(); ++j) {
        if (i != j && groups_[i].digit == groups_[j].digit && is_seen(i, j)) robs_[i].add(j);
      }
    }
  }

  void run() {
    for (int length = fewest_; length <= most_; ++length) {
      for (std::size_t start = 0; start < groups_.size(); ++start) {
        if (!walk_from(start, length)) return;
      }
    }
  }

 private:
  struct Level {
    Bits lost;  // groups that have just lost their digit
    Bits kept;  // groups that now must hold it
  };

  void number_groups() {
    std::map<std::pair<Digit, std::array<std::uint64_t, CellSet::kWords>>, std::size_t> numbers;
    for (const AlmostLockedSet& set : sets_) {
      groups_of_.emplace_back();
      for (const Digit digit : set.digits) {
        const CellSet cells = position_.places(digit) & set.cells;
        const auto [at, is_new] = numbers.try_emplace({digit, {cells.word(0), cells.word(1), cells.word(2), cells.word(3)}}, groups_.size());
        if (is_new) groups_.push_back({digit, cells, position_.shape().common_peers(cells)});
        groups_of_.back().push_back(at->second);
      }
    }
  }

  // Does the first group, if it holds its digit, take it from the second? (Weakened: if it takes it from one cell.)
  [[nodiscard]] bool is_seen(std::size_t from, std::size_t to) const {
    if (is_weakened(technique_, Guard::kSound)) return groups_[to].cells.meets(groups_[from].seeing);
    return groups_[to].cells.is_subset_of(groups_[from].seeing);
  }

  // Breadth first up to `length` sets; decides about the groups reached by the last of them for the first time.
  bool walk_from(std::size_t start, int length) {
    Bits lost(groups_.size());
    lost.add(start);
    Bits seen_lost = lost;
    Bits seen_kept(groups_.size());
    std::vector<Level> levels;
    while (true) {
      Bits kept(groups_.size());
      lost.for_each([&](std::size_t i) { kept.join(locks_[i]); });
      kept.leave(seen_kept);
      if (kept.is_empty()) return true;
      seen_kept.join(kept);
      levels.push_back({lost, kept});
      if (static_cast<int>(levels.size()) == length) break;
      lost = Bits(groups_.size());
      kept.for_each([&](std::size_t i) { lost.join(robs_[i]); });
      lost.leave(seen_lost);
      seen_lost.join(lost);
    }
    bool go_on = true;
    levels.back().kept.for_each([&](std::size_t end) { go_on = go_on && decide(start, end, levels); });
    return go_on;
  }

  // A set that robs itself, and two sets that share the digit of their ends as well, are doubly linked.
  [[nodiscard]] bool is_one_locked_set(std::size_t start, std::size_t end, std::size_t length) const {
    return start == end || (length == 2 && groups_[end].cells.is_subset_of(groups_[start].seeing));
  }

  bool decide(std::size_t start, std::size_t end, const std::vector<Level>& levels) {
    const Group& first = groups_[start];
    const Group& last = groups_[end];
    if (end < start || first.digit != last.digit) return true;
    if (!is_weakened(technique_, Guard::kTrueSize) && is_one_locked_set(start, end, levels.size())) return true;
    const CellSet struck_cells = position_.places(first.digit) & first.seeing & last.seeing;
    if (struck_cells.is_empty()) return true;
    std::vector<Candidate> struck;
    for (const Cell cell : struck_cells) struck.push_back({cell, first.digit});
    if (!reported_.is_new(struck)) return true;
    return sink_.take(by_supposing(technique_, std::move(struck), {{sum_of_walk(end, levels)}}));
  }

  // All sets of the walk: their cells need more digits than are left for them.
  [[nodiscard]] std::vector<LinearTerm> sum_of_walk(std::size_t end, const std::vector<Level>& levels) const {
    SumOfSets sum;
    std::size_t kept = end;
    for (std::size_t level = levels.size(); level-- > 0;) {
      const std::size_t lost = first_of(levels[level].lost, [&](std::size_t i) { return locks_[i].has(kept); });
      sum.add_set(set_between(lost, kept), DigitSet::of(groups_[lost].digit) | DigitSet::of(groups_[kept].digit));
      if (level == 0) break;
      kept = first_of(levels[level - 1].kept, [&](std::size_t i) { return robs_[i].has(lost); });
      if (const auto house = house_around(position_.shape(), groups_[lost].cells | groups_[kept].cells)) sum.add_cover(*house, groups_[lost].digit);
    }
    return sum.terms();
  }
  template <typename Test>
  static std::size_t first_of(const Bits& among, Test test) {
    std::size_t found = SIZE_MAX;
    among.for_each([&](std::size_t i) {
      if (found == SIZE_MAX && test(i)) found = i;
    });
    return found;
  }
  [[nodiscard]] const AlmostLockedSet& set_between(std::size_t lost, std::size_t kept) const {
    std::size_t found = 0;
    const auto has = [&](std::size_t set, std::size_t group) {
      for (const std::size_t own : groups_of_[set]) {
        if (own == group) return true;
      }
      return false;
    };
    while (!has(found, lost) || !has(found, kept)) ++found;
    return sets_[found];
  }

  std::string_view technique_;
  int fewest_;
  int most_;
  const Position& position_;
  StepSink& sink_;
  std::vector<AlmostLockedSet> sets_;
  std::vector<Group> groups_;
  std::vector<std::vector<std::size_t>> groups_of_;  // per set
  std::vector<Bits> locks_;  // per group that has lost its digit: groups of the same sets that then must hold theirs
  std::vector<Bits> robs_;   // per group that holds its digit: groups that lose it
  Reported reported_;
};

}  // namespace

void find_set_walks(std::string_view technique, int fewest, int most, const Position& position, StepSink& sink) {
  WalkSearch(technique, fewest, most, position, sink).run();
}

}  // namespace cp::deduce
