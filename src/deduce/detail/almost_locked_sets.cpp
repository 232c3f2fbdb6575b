// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/almost_locked_sets.h"

#include <algorithm>
#include <array>
#include <bit>

#include "deduce/detail/tables.h"

namespace cp::deduce {

namespace {

// The subsets of one house, by growing them cell by cell. Order: as a row of cell numbers is ordered.
class SetsOfHouse {
 public:
  SetsOfHouse(const Position& position, House house, int most_cells, std::vector<AlmostLockedSet>& found)
      : position_(position), house_(house), most_cells_(most_cells), found_(found) {
    for (const Cell cell : position.open() & position.shape().cells(house)) cells_[static_cast<std::size_t>(count_++)] = cell;
  }

  void grow(int from, int size, const CellSet& cells, DigitSet digits) {
    if (size > 0 && digits.size() == size + 1 && house_around(position_.shape(), cells) == house_) found_.push_back({house_, cells, digits});
    if (size == most_cells_) return;
    for (int i = from; i < count_; ++i) {
      const Cell cell = cells_[static_cast<std::size_t>(i)];
      const DigitSet more = digits | position_.candidates(cell);
      if (more.size() > most_cells_ + 1) continue;
      chosen_[static_cast<std::size_t>(size)] = cell;
      if (has_locked_part(size + 1)) continue;
      CellSet larger = cells;
      larger.add(cell);
      grow(i + 1, size + 1, larger, more);
    }
  }

 private:
  // Do some of the first chosen cells, the last of them included, have no more digits than cells?
  [[nodiscard]] bool has_locked_part(int count) const {
    const unsigned last = 1U << (count - 1);
    for (unsigned part = last; part < 2 * last; ++part) {
      DigitSet digits;
      for (int i = 0; i < count; ++i) {
        if (((part >> i) & 1U) != 0) digits |= position_.candidates(chosen_[static_cast<std::size_t>(i)]);
      }
      if (digits.size() <= std::popcount(part)) return true;
    }
    return false;
  }

  const Position& position_;
  House house_;
  int most_cells_;
  std::vector<AlmostLockedSet>& found_;
  std::array<Cell, kMaxSide> cells_{};
  int count_ = 0;
  std::array<Cell, kMaxSide> chosen_{};
};

}  // namespace

std::vector<AlmostLockedSet> almost_locked_sets(const Position& position, int most_cells) {
  std::vector<AlmostLockedSet> found;
  for (const House house : houses_in_order(position.shape())) SetsOfHouse(position, house, most_cells, found).grow(0, 0, {}, {});
  std::stable_sort(found.begin(), found.end(), [](const AlmostLockedSet& a, const AlmostLockedSet& b) { return a.digits.size() < b.digits.size(); });
  return found;
}

std::vector<House> houses_around(const Shape& shape, const CellSet& cells) {
  std::vector<House> houses;
  if (cells.is_empty()) return houses;
  const std::array<House, 3> own = shape.houses_of(cells.first());
  for (const House house : {own[2], own[0], own[1]}) {
    if (cells.is_subset_of(shape.cells(house))) houses.push_back(house);
  }
  return houses;
}

std::optional<House> house_around(const Shape& shape, const CellSet& cells) {
  const std::array<House, 3> own = shape.houses_of(cells.first());
  for (const House house : {own[2], own[0], own[1]}) {
    if (cells.is_subset_of(shape.cells(house))) return house;
  }
  return std::nullopt;
}

std::vector<Candidate> seeing_all(const Position& position, Digit digit, const CellSet& cells) {
  CellSet seeing = position.places(digit);
  for (const Cell cell : cells) seeing &= position.shape().peers(cell);
  std::vector<Candidate> found;
  for (const Cell cell : seeing) found.push_back({cell, digit});
  return found;
}

void SumOfSets::add_set(const AlmostLockedSet& set, DigitSet except) {
  for (const Cell cell : set.cells) add_base(Constraint::of(cell));
  for (const Digit digit : set.digits - except) add_cover(set.house, digit);
}

std::vector<LinearTerm> SumOfSets::terms() const {
  std::vector<LinearTerm> terms;
  for (const auto& [fact, times] : bases_) terms.push_back({fact, times});
  for (const auto& [fact, times] : covers_) terms.push_back({fact, times});
  return terms;
}

}  // namespace cp::deduce
