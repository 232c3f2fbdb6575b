// SPDX-License-Identifier: Apache-2.0
#include "balance/finder.h"

#include <algorithm>
#include <bit>
#include <optional>

#include "balance/quick_look.h"

namespace cp {

namespace {

std::vector<Weight> weights_of(const DistinctBalance& balance) {
  std::uint32_t left = balance.left_houses;
  std::uint32_t right = balance.right_houses;
  // Left is the heavier pan; with equal pans the one whose houses come first.
  const int surplus = std::popcount(left) - std::popcount(right);
  if (surplus < 0 || (surplus == 0 && std::countr_zero(right) < std::countr_zero(left))) std::swap(left, right);
  std::vector<Weight> weights;
  for (int house = 0; house < 32; ++house) {
    if (((left >> house) & 1U) != 0) weights.push_back({House(house), 1});
    if (((right >> house) & 1U) != 0) weights.push_back({House(house), -1});
  }
  return weights;
}

// No part of the load is smaller than this, whatever the balance proves; the hint can take off at most kMostHint.
int least_key(const DistinctBalance& balance) {
  return balance.house_count + (balance.left | balance.right).size() - kMostHint;
}

class Finder {
 public:
  Finder(const Position& position, const FinderOptions& options, KeptBalances& kept)
      : position_(position), options_(options), distinct_(kept.of(position, options.most_raw_slack, options.most_houses)), givens_(two_words(position.givens())),
        given_count_(position.givens().size()) {
    if (position.shape().side() == 9) quick_look_.emplace(position);
    for (int house = 0; house < position.shape().house_count(); ++house) house_cells_.push_back(two_words(position.shape().cells(House(house))));
  }

  FinderResult run() {
    result_.scanned = distinct_.scanned();
    result_.distinct = distinct_.all().size();
    result_.is_impossible = distinct_.is_impossible();
    int key = -kMostHint;
    for (const auto& group : by_least_key()) {
      if (is_full() && key > worst_key()) break;
      for (const std::uint32_t number : group) examine(distinct_.all()[number]);
      ++key;
    }
    return std::move(result_);
  }

 private:
  // Numbers of the distinct balances, grouped by least key.
  [[nodiscard]] std::vector<std::vector<std::uint32_t>> by_least_key() const {
    std::vector<std::vector<std::uint32_t>> groups;
    for (std::uint32_t i = 0; i < distinct_.all().size(); ++i) {
      const auto key = static_cast<std::size_t>(least_key(distinct_.all()[i]) + kMostHint);
      if (key >= groups.size()) groups.resize(key + 1);
      groups[key].push_back(i);
    }
    return groups;
  }

  [[nodiscard]] bool is_full() const { return options_.limit > 0 && result_.balances.size() >= options_.limit; }
  [[nodiscard]] int worst_key() const { return key_of(result_.balances.back()); }
  static int key_of(const FoundBalance& found) { return rank_key(found.load, found.pointing); }

  // The load cannot be smaller: the hint is known, one lemma is said, and slack beyond the free one is forced.
  [[nodiscard]] int least_key_with_hint(const DistinctBalance& balance) const {
    const int said = balance.slack > options_.most_free_slack ? 3 : 1;
    return balance.house_count + (balance.left | balance.right).size() - hint_of(balance) + said;
  }

  // The same hint as pointing_of() gives.
  [[nodiscard]] int hint_of(const DistinctBalance& balance) const {
    const auto cells_of = [&](std::uint32_t houses) {
      TwoWords cells;
      for (; houses != 0; houses &= houses - 1) cells = cells | house_cells_[static_cast<std::size_t>(std::countr_zero(houses))];
      return cells;
    };
    const TwoWords left = cells_of(balance.left_houses);
    const TwoWords right = cells_of(balance.right_houses);
    int hint = 0;
    for (const TwoWords region : {left - right, right - left, left & right}) {
      hint = std::max(hint, givens_above_even(region.size(), (region & givens_).size(), position_.shape().cell_count(), given_count_));
    }
    return std::min(hint, kMostHint);
  }

  void examine(const DistinctBalance& balance) {
    if (is_full() && least_key_with_hint(balance) > worst_key()) return;
    ++result_.examined;
    if (quick_look_) {
      const QuickLook::Answer answer = quick_look_->look(balance, options_.most_free_slack);
      if (!answer.may_say) return;
      // What it will weigh at least: every forced share, every case after the first, and a lemma a case.
      const int least = least_key(balance) + kMostHint - hint_of(balance) + 2 * answer.forced_digits + 5 * answer.cases - 4;
      if (is_full() && least > worst_key()) return;
    }
    if (is_sum(balance)) return;
    FoundBalance found;
    found.weighing = weigh(position_, weights_of(balance));
    Inference inference = infer(position_, found.weighing, options_.highest_level, !options_.target);
    result_.is_impossible = result_.is_impossible || inference.is_impossible;
    if (inference.free_slack > options_.most_free_slack) return;
    const auto speaks = std::find_if(inference.levels.begin(), inference.levels.end(), [&](const LevelResult& level) { return says_enough(level); });
    if (speaks == inference.levels.end()) return;
    found.free_slack = inference.free_slack;
    found.result = std::move(*speaks);
    found.load = load_of(found.weighing, found.result.reason);
    found.pointing = pointing_of(position_, found.weighing);
    const auto at = std::upper_bound(result_.balances.begin(), result_.balances.end(), found, [](const FoundBalance& a, const FoundBalance& b) {
      if (key_of(a) != key_of(b)) return key_of(a) < key_of(b);
      return a.weighing.weights < b.weighing.weights;
    });
    result_.balances.insert(at, std::move(found));
    if (options_.limit > 0 && result_.balances.size() > options_.limit) result_.balances.pop_back();
  }

  [[nodiscard]] bool says_enough(const LevelResult& level) const {
    return !options_.target || std::find(level.eliminations.begin(), level.eliminations.end(), *options_.target) != level.eliminations.end();
  }

  // Is it two smaller balances put side by side? One of the two holds the first cell, so only those are looked at.
  [[nodiscard]] bool is_sum(const DistinctBalance& balance) {
    if (!has_parts_) sort_parts();
    const TwoWords left = balance.left;
    const TwoWords right = balance.right;
    const auto splits = [&](TwoWords part_left, TwoWords part_right) {
      if (!(part_left - left).is_empty() || !(part_right - right).is_empty()) return false;
      return distinct_.has(left - part_left, right - part_right);
    };
    const int size = (left | right).size();
    for (const Part& part : parts_[first_cell(left | right)]) {
      if (part.size >= size) return false;
      if (splits(part.left, part.right) || splits(part.right, part.left)) return true;
    }
    return false;
  }

  // The open cells of a distinct balance.
  struct Part {
    TwoWords left;
    TwoWords right;
    int size;
  };

  static std::size_t first_cell(TwoWords cells) {
    return static_cast<std::size_t>(cells.low != 0 ? std::countr_zero(cells.low) : 64 + std::countr_zero(cells.high));
  }

  void sort_parts() {
    has_parts_ = true;
    for (const DistinctBalance& balance : distinct_.all()) {
      const TwoWords cells = balance.left | balance.right;
      parts_[first_cell(cells)].push_back({balance.left, balance.right, cells.size()});
    }
    for (auto& parts : parts_) {
      std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.size < b.size; });
    }
  }

  const Position& position_;
  const FinderOptions& options_;
  const DistinctBalances& distinct_;
  std::vector<TwoWords> house_cells_;  // by house index
  TwoWords givens_;
  int given_count_;
  std::optional<QuickLook> quick_look_;  // 9x9 only
  std::array<std::vector<Part>, 128> parts_;  // by first cell, small ones first; empty until asked for
  bool has_parts_ = false;
  FinderResult result_;
};

}  // namespace

bool can_find(const Shape& shape) { return shape.side() <= 9; }

FinderResult find_balances(const Position& position, const FinderOptions& options) {
  KeptBalances kept;
  return find_balances(position, options, kept);
}

FinderResult find_balances(const Position& position, const FinderOptions& options, KeptBalances& kept) { return Finder(position, options, kept).run(); }

}  // namespace cp
