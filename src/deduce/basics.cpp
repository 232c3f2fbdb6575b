// SPDX-License-Identifier: Apache-2.0
#include "deduce/basics.h"

#include <algorithm>
#include <bit>

#include "deduce/detail/basics_state.h"

namespace cp {

namespace {

using deduce::BasicsGeometry;
using deduce::BasicsState;
using Mask = BasicsState::Mask;

std::size_t lowest(Mask mask) { return static_cast<std::size_t>(std::countr_zero(mask)); }
void drop_lowest(Mask& mask) { mask = static_cast<Mask>(mask & (mask - 1)); }
Mask without(Mask mask, Mask other) { return static_cast<Mask>(mask & ~other); }
bool is_several(Mask mask) { return (mask & (mask - 1)) != 0; }

// Members (bit = index) and union of a group of masks with as many bits as members.
struct Group {
  Mask members = 0;
  Mask bits = 0;
};

// Rows of a table of yes and no that are worth joining, with their indices.
class Masks {
 public:
  // Takes masks with 2 .. largest bits; others are in no group of true size up to `largest`.
  void offer(std::size_t index, Mask mask, int largest) {
    const int size = std::popcount(mask);
    if (size < 2 || size > largest) return;
    masks_[count_] = mask;
    names_[count_++] = static_cast<Mask>(1U << index);
  }

  // Calls use(group) for each tight group of 2 to `largest` members, until one call says that it changed something.
  template <typename Use>
  bool for_each_group(int largest, Use use) const {
    return count_ >= 2 && extend(0, 0, largest, {}, use);
  }

 private:
  template <typename Use>
  bool extend(std::size_t from, int depth, int largest, Group group, Use& use) const {
    for (std::size_t i = from; i < count_; ++i) {
      const Group next{static_cast<Mask>(group.members | names_[i]), static_cast<Mask>(group.bits | masks_[i])};
      const int size = std::popcount(next.bits);
      if (size > largest) continue;
      if (size == depth + 1) {
        if (use(next)) return true;
      } else if (depth + 1 < largest && extend(i + 1, depth + 1, largest, next, use)) {
        return true;
      }
    }
    return false;
  }

  std::size_t count_ = 0;
  std::array<Mask, kMaxSide> masks_;
  std::array<Mask, kMaxSide> names_;
};

// How large groups must be looked for in a table of `count` rows and columns. A tight group of rows leaves a tight group
// of the other columns (Hall's condition read the other way), so up to nine the smaller of the two is enough; groups of
// one are singles and dealt with before.
struct Limits {
  int rows;
  int columns;
};
Limits limits(int count) {
  constexpr int kLargest = 4;
  if (count > 9) return {kLargest, kLargest};
  return {std::min(kLargest, count / 2), std::min(kLargest, (count - 1) / 2)};
}

class Basics {
 public:
  Basics(const Position& position, BasicsGroups groups) : state_(position, groups.hidden_singles), groups_(groups) {}

  bool run() {
    do {
      if (!state_.settle()) return false;
      if (!groups_.hidden_singles) return true;
    } while ((groups_.locked && use_locked()) || (groups_.subsets && use_subsets()) || (groups_.fish && use_fish()));
    return true;
  }
  void write_to(Position& position) const { state_.write_to(position); }

 private:
  // Each of these returns true as soon as it has changed something that may have left singles.
  bool use_locked();
  bool use_subsets();
  bool use_fish();

  bool point(std::size_t box, std::size_t digit);
  bool claim(std::size_t kind, std::size_t line, std::size_t digit);
  bool use_house(std::size_t kind, std::size_t number);
  bool use_digit(std::size_t digit);

  [[nodiscard]] std::size_t side() const { return static_cast<std::size_t>(state_.geometry().side); }
  bool strike(std::size_t kind, std::size_t number, std::size_t digit, Mask cells) {
    if (cells == 0) return false;
    state_.strike_places(kind, number, digit, cells);
    return true;
  }

  BasicsState state_;
  BasicsGroups groups_;
};

bool Basics::use_locked() {
  bool changed = false;
  for (std::size_t digit = 0; digit < side(); ++digit) {
    Mask& boxes = state_.changed_for_digit(BasicsState::kBox, digit);
    while (boxes != 0) {
      const std::size_t box = lowest(boxes);
      drop_lowest(boxes);
      changed = point(box, digit) || changed;
    }
    for (std::size_t kind = 0; kind < 2; ++kind) {
      Mask& lines = state_.changed_for_digit(kind, digit);
      while (lines != 0) {
        const std::size_t line = lowest(lines);
        drop_lowest(lines);
        changed = claim(kind, line, digit) || changed;
      }
    }
    if (state_.is_unsettled()) return true;
  }
  return changed;
}

bool Basics::point(std::size_t box, std::size_t digit) {
  const BasicsGeometry& geometry = state_.geometry();
  const Mask places = state_.places(BasicsState::kBox, box, digit);
  if (!is_several(places)) return false;
  for (std::size_t kind = 0; kind < 2; ++kind) {
    for (const auto& overlap : geometry.overlaps[kind][box]) {
      if (without(places, overlap.in_box) != 0) continue;
      return strike(kind, overlap.line, digit, without(state_.places(kind, overlap.line, digit), overlap.in_line));
    }
  }
  return false;
}

bool Basics::claim(std::size_t kind, std::size_t line, std::size_t digit) {
  const BasicsGeometry& geometry = state_.geometry();
  const Mask places = state_.places(kind, line, digit);
  if (!is_several(places)) return false;
  const std::size_t first_cell = geometry.cell_at[kind][line][lowest(places)];
  const std::size_t box = geometry.spots[first_cell].house[BasicsState::kBox];
  for (const auto& overlap : geometry.overlaps[kind][box]) {
    if (overlap.line != line || overlap.in_box == 0) continue;
    if (without(places, overlap.in_line) != 0) return false;
    return strike(BasicsState::kBox, box, digit, without(state_.places(BasicsState::kBox, box, digit), overlap.in_box));
  }
  return false;
}

bool Basics::use_subsets() {
  for (std::size_t kind = 0; kind < 3; ++kind) {
    Mask& houses = state_.changed_houses(kind);
    while (houses != 0) {
      const std::size_t number = lowest(houses);
      if (use_house(kind, number)) return true;  // still marked as changed
      drop_lowest(houses);
    }
  }
  return false;
}

bool Basics::use_house(std::size_t kind, std::size_t number) {
  const auto& cell_at = state_.geometry().cell_at[kind][number];
  const Mask open = state_.open(kind, number);
  const Limits limit = limits(std::popcount(open));
  Masks naked;
  for (Mask left = open; left != 0; drop_lowest(left)) naked.offer(lowest(left), state_.candidates(cell_at[lowest(left)]), limit.rows);
  if (naked.for_each_group(limit.rows, [&](const Group& group) {
        bool changed = false;
        for (Mask left = group.bits; left != 0; drop_lowest(left)) {
          const std::size_t digit = lowest(left);
          changed = strike(kind, number, digit, without(state_.places(kind, number, digit), group.members)) || changed;
        }
        return changed;
      })) {
    return true;
  }
  Masks hidden;
  for (std::size_t digit = 0; digit < side(); ++digit) hidden.offer(digit, state_.places(kind, number, digit), limit.columns);
  return hidden.for_each_group(limit.columns, [&](const Group& group) {
    bool changed = false;
    for (Mask left = group.bits; left != 0; drop_lowest(left)) {
      const std::size_t cell = cell_at[lowest(left)];
      const Mask others = without(state_.candidates(cell), group.members);
      if (others != 0) state_.strike_digits(cell, others);
      changed = changed || others != 0;
    }
    return changed;
  });
}

bool Basics::use_fish() {
  Mask& digits = state_.changed_digits();
  while (digits != 0) {
    if (use_digit(lowest(digits))) return true;
    drop_lowest(digits);
  }
  return false;
}

bool Basics::use_digit(std::size_t digit) {
  int count = 0;
  for (std::size_t row = 0; row < side(); ++row) count += state_.places(BasicsState::kRow, row, digit) != 0 ? 1 : 0;
  const Limits limit = limits(count);
  const auto use_lines = [&](std::size_t kind, int largest) {
    Masks lines;
    for (std::size_t line = 0; line < side(); ++line) lines.offer(line, state_.places(kind, line, digit), largest);
    return lines.for_each_group(largest, [&](const Group& group) {
      bool changed = false;
      for (Mask left = group.bits; left != 0; drop_lowest(left)) {
        const Mask places = state_.places(1 - kind, lowest(left), digit);
        changed = strike(1 - kind, lowest(left), digit, without(places, group.members)) || changed;
      }
      return changed;
    });
  };
  return use_lines(BasicsState::kRow, limit.rows) || use_lines(BasicsState::kColumn, limit.columns);
}

}  // namespace

bool run_basics(Position& position, BasicsGroups groups) {
  Basics basics(position, groups);
  if (!basics.run()) return false;
  basics.write_to(position);
  return true;
}

}  // namespace cp
