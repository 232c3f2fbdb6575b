// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/mixed_houses.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <utility>
#include <vector>

#include "deduce/detail/guard.h"
#include "deduce/detail/one_digit_links.h"
#include "deduce/detail/tables.h"

namespace cp::deduce {

namespace {

constexpr int kLargestSide = 9;
constexpr std::size_t kMostHouses = 4;

using Houses = std::array<House, kMostHouses>;

// The cells of a grid up to 9x9 in two words: the search below spends its time on such sets.
struct Cells {
  std::uint64_t low = 0;
  std::uint64_t high = 0;

  static Cells of(const CellSet& cells) { return {cells.word(0), cells.word(1)}; }
  [[nodiscard]] bool is_empty() const { return (low | high) == 0; }
  [[nodiscard]] bool meets(const Cells& other) const { return ((low & other.low) | (high & other.high)) != 0; }
  [[nodiscard]] Cell first() const { return low != 0 ? Cell(std::countr_zero(low)) : Cell(64 + std::countr_zero(high)); }
  [[nodiscard]] Cells with(const Cells& other) const { return {low | other.low, high | other.high}; }
  [[nodiscard]] Cells without(const Cells& other) const { return {low & ~other.low, high & ~other.high}; }
};

// The cells of every house, by its index.
struct HouseCells {
  explicit HouseCells(const Shape& shape) {
    for (int i = 0; i < shape.house_count(); ++i) cells[static_cast<std::size_t>(i)] = Cells::of(shape.cells(House(i)));
  }
  std::array<Cells, 3 * kLargestSide> cells{};
};

// Which kinds of houses may stand on a side, one bit each.
using Kinds = unsigned;
constexpr Kinds kind_bit(HouseKind kind) { return 1U << static_cast<unsigned>(kind); }
constexpr Kinds kRow = kind_bit(HouseKind::kRow);
constexpr Kinds kColumn = kind_bit(HouseKind::kColumn);
constexpr Kinds kBox = kind_bit(HouseKind::kBox);

// One digit, with the kinds allowed as bases and as covers.
class MixedSearch {
 public:
  MixedSearch(std::string_view technique, std::size_t size, MixedKind kind, const Position& position, const HouseCells& house_cells, Digit digit, ReportedOnce& reported, StepSink& sink)
      : technique_(technique), size_(size), kind_(kind), position_(position), shape_(position.shape()), house_cells_(house_cells), digit_(digit), reported_(reported), sink_(sink) {
    for (const House house : houses_in_order(shape_)) {
      if (position.places(house, digit).size() >= 2) houses_.push_back({house, Cells::of(position.places(house, digit))});
    }
  }

  // False when the sink asked to stop.
  bool run(Kinds bases_allowed, Kinds covers_allowed) {
    bases_allowed_ = bases_allowed;
    covers_allowed_ = covers_allowed;
    return extend(0, 0, {});
  }

 private:
  [[nodiscard]] Kinds kind_of(House house) const { return kind_bit(shape_.kind(house)); }

  bool extend(std::size_t from, std::size_t depth, const Cells& places) {
    if (depth == size_) return try_bases(places);
    for (std::size_t i = from; i < houses_.size(); ++i) {
      const auto& [house, more] = houses_[i];
      if ((kind_of(house) & bases_allowed_) == 0 || more.meets(places)) continue;
      bases_[depth] = house;
      if (!extend(i + 1, depth + 1, places.with(more))) return false;
    }
    return true;
  }

  bool try_bases(const Cells& places) {
    ways_.clear();
    fewer_do_ = false;
    cover(0, places);
    if (fewer_do_) return true;  // more bases than covers: the position contradicts itself
    for (const Houses& covers : ways_) {
      if (is_of_kind(covers) && !report(CellSet::from_words(places.low, places.high), covers)) return false;
    }
    return true;
  }

  // Every way to cover the places that are left: one of them needs one of its houses.
  void cover(std::size_t depth, const Cells& left) {
    if (left.is_empty()) {
      if (depth == size_) ways_.push_back(covers_);
      fewer_do_ = fewer_do_ || depth < size_;
      return;
    }
    if (depth == size_ || fewer_do_) return;
    for (const House house : shape_.houses_of(left.first())) {
      if ((kind_of(house) & covers_allowed_) == 0 || is_base(house)) continue;
      covers_[depth] = house;
      cover(depth + 1, left.without(house_cells_.cells[house.index]));
    }
  }

  [[nodiscard]] bool is_base(House house) const {
    for (std::size_t i = 0; i < size_; ++i) {
      if (bases_[i] == house) return true;
    }
    return false;
  }

  [[nodiscard]] bool is_of_kind(const Houses& covers) const {
    Kinds base_kinds = 0;
    Kinds cover_kinds = 0;
    for (std::size_t i = 0; i < size_; ++i) {
      base_kinds |= kind_of(bases_[i]);
      cover_kinds |= kind_of(covers[i]);
      for (std::size_t j = 0; j < size_ && !is_weakened(technique_, Guard::kTrueSize); ++j) {
        if (position_.places(bases_[i], digit_).is_subset_of(shape_.cells(covers[j]))) return false;
      }
    }
    const Kinds all = base_kinds | cover_kinds;
    const bool is_one_way = (base_kinds & kColumn) == 0 && (cover_kinds & kRow) == 0;
    const bool is_other_way = (base_kinds & kRow) == 0 && (cover_kinds & kColumn) == 0;
    return kind_ == MixedKind::kFranken ? (all & kBox) != 0 : !is_one_way && !is_other_way;
  }

  bool report(const CellSet& places, const Houses& covers) {
    CellSet once;
    CellSet twice;
    Facts base_facts;
    Facts cover_facts;
    for (std::size_t i = 0; i < size_; ++i) {
      twice |= once & shape_.cells(covers[i]);
      once |= shape_.cells(covers[i]);
      base_facts.push_back(Constraint::of(bases_[i], digit_));
      cover_facts.push_back(Constraint::of(covers[i], digit_));
    }
    const CellSet spared = is_weakened(technique_, Guard::kSound) ? CellSet() : places;
    std::vector<Candidate> eliminations;
    for (const Cell cell : position_.places(digit_) & ((once - spared) | twice)) eliminations.push_back({cell, digit_});
    if (!reported_.is_new(eliminations)) return true;
    std::sort(base_facts.begin(), base_facts.end());
    std::sort(cover_facts.begin(), cover_facts.end());
    return sink_.take(by_sum(technique_, std::move(eliminations), base_facts, cover_facts));
  }

  std::string_view technique_;
  std::size_t size_;
  MixedKind kind_;
  const Position& position_;
  const Shape& shape_;
  const HouseCells& house_cells_;
  Digit digit_;
  ReportedOnce& reported_;
  StepSink& sink_;
  Kinds bases_allowed_ = 0;
  Kinds covers_allowed_ = 0;
  std::vector<std::pair<House, Cells>> houses_;  // those that can be bases, with their places
  Houses bases_{};
  Houses covers_{};
  std::vector<Houses> ways_;
  bool fewer_do_ = false;
};

}  // namespace

void find_mixed_fish(std::string_view technique, int size, MixedKind kind, const Position& position, StepSink& sink) {
  if (position.shape().side() > kLargestSide) return;
  const HouseCells house_cells(position.shape());
  ReportedOnce reported;
  for (const Digit digit : position.shape().digits()) {
    MixedSearch search(technique, static_cast<std::size_t>(size), kind, position, house_cells, digit, reported, sink);
    if (kind == MixedKind::kMutant) {
      if (!search.run(kRow | kColumn | kBox, kRow | kColumn | kBox)) return;
    } else if (!search.run(kRow | kBox, kColumn | kBox) || !search.run(kColumn | kBox, kRow | kBox)) {
      return;
    }
  }
}

}  // namespace cp::deduce
