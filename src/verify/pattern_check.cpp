// SPDX-License-Identifier: Apache-2.0
#include "verify/pattern_check.h"

#include <array>
#include <map>

namespace cp {

namespace {

constexpr int kMostTries = 200'000;

// Fills the cells of a pattern one by one, no digit twice in a house.
class Filler {
 public:
  Filler(const Shape& shape, const DeadlyPattern& pattern) : shape_(shape), pattern_(pattern), held_(pattern.cells.size()) {}

  // Does every filling from the pattern's digits have another with the same digits in every house?
  bool every_filling_has_another(std::size_t at = 0) {
    if (++tries_ > kMostTries) return false;
    if (at == pattern_.cells.size()) return has_another();
    for (const Digit digit : pattern_.digits[at]) {
      if (!put(at, digit)) continue;
      const bool goes_on = every_filling_has_another(at + 1);
      take_back(at, digit);
      if (!goes_on) return false;
    }
    return true;
  }

 private:
  // Refills the cells with what each house holds now.
  bool has_another() {
    const std::vector<Digit> first = held_;
    const std::array<DigitSet, 3 * kMaxSide> wanted = used_;
    used_ = {};
    const bool found = refill(0, first, wanted, false);
    used_ = wanted;
    held_ = first;
    return found;
  }

  bool refill(std::size_t at, const std::vector<Digit>& first, const std::array<DigitSet, 3 * kMaxSide>& wanted, bool differs) {
    if (++tries_ > kMostTries) return false;
    if (at == pattern_.cells.size()) return differs;
    DigitSet digits = shape_.digits();
    for (const House house : shape_.houses_of(pattern_.cells[at])) digits &= wanted[house.index];
    for (const Digit digit : digits) {
      if (!put(at, digit)) continue;
      const bool found = refill(at + 1, first, wanted, differs || digit != first[at]);
      take_back(at, digit);
      if (found) return true;
    }
    return false;
  }

  bool put(std::size_t at, Digit digit) {
    for (const House house : shape_.houses_of(pattern_.cells[at])) {
      if (used_[house.index].has(digit)) return false;
    }
    for (const House house : shape_.houses_of(pattern_.cells[at])) used_[house.index].add(digit);
    held_[at] = digit;
    return true;
  }
  void take_back(std::size_t at, Digit digit) {
    for (const House house : shape_.houses_of(pattern_.cells[at])) used_[house.index].remove(digit);
  }

  const Shape& shape_;
  const DeadlyPattern& pattern_;
  std::vector<Digit> held_;
  std::array<DigitSet, 3 * kMaxSide> used_{};
  int tries_ = 0;
};

// Two digits in each cell, each digit in none or two cells of each house: then a house has as many cells of the pattern
// as digits, each digit falls once, and giving every cell its other digit keeps all houses as they are.
bool can_swap_everywhere(const Shape& shape, const DeadlyPattern& pattern) {
  std::map<std::pair<House, Digit>, int> count;
  for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
    if (pattern.digits[i].size() != 2) return false;
    for (const House house : shape.houses_of(pattern.cells[i])) {
      for (const Digit digit : pattern.digits[i]) ++count[{house, digit}];
    }
  }
  for (const auto& [place, times] : count) {
    if (times != 2) return false;
  }
  return true;
}

}  // namespace

CheckResult check_pattern(const Position& before, const DeadlyPattern& pattern) {
  const Shape& shape = before.shape();
  if (pattern.cells.empty() || pattern.cells.size() != pattern.digits.size()) return CheckResult::no("a pattern without cells or digits");
  for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
    if (pattern.cells[i].index >= shape.cell_count()) return CheckResult::no("a cell of a pattern is not in the grid");
    if (!pattern.digits[i].is_subset_of(shape.digits())) return CheckResult::no("a digit of a pattern is not in the grid");
    if (i > 0 && !(pattern.cells[i - 1] < pattern.cells[i])) return CheckResult::no("the cells of a pattern are not in order");
    if (before.givens().has(pattern.cells[i])) return CheckResult::no("a cell of a deadly pattern is a given");
  }
  if (can_swap_everywhere(shape, pattern) || Filler(shape, pattern).every_filling_has_another()) return CheckResult::yes();
  return CheckResult::no("the pattern can not always be refilled");
}

}  // namespace cp
