// SPDX-License-Identifier: Apache-2.0
// Rectangles that a puzzle with one solution cannot leave open: two rows, two columns, two boxes, two digits. If the
// four corners held only the pair, the two digits could be exchanged and every house would keep what it has.
#pragma once

#include <array>
#include <set>
#include <string_view>
#include <vector>

#include "deduce/detail/arguments.h"
#include "grid/position.h"

namespace cp::deduce {

// Corners 0 and 1 share a row, 0 and 2 a column; so corner 3 - i lies across from corner i.
using Corners = std::array<Cell, 4>;

// Four open corners that all have both digits of the pair, at least one of them nothing else.
struct DeadlyRectangle {
  Corners corners;
  DigitSet pair;
  std::array<DigitSet, 4> extras;  // what each corner has besides the pair

  // The corners that have extras.
  [[nodiscard]] CellSet rich() const {
    CellSet cells;
    for (std::size_t i = 0; i < 4; ++i) {
      if (!extras[i].is_empty()) cells.add(corners[i]);
    }
    return cells;
  }
  [[nodiscard]] DigitSet all_extras() const { return extras[0] | extras[1] | extras[2] | extras[3]; }
  [[nodiscard]] CellSet cells() const {
    CellSet all;
    for (const Cell corner : corners) all.add(corner);
    return all;
  }
  [[nodiscard]] Digit other(Digit digit) const { return (pair - DigitSet::of(digit)).lowest(); }
};

// These cells, with the same digits for each.
DeadlyPattern pattern_of(const CellSet& cells, DigitSet digits);

// The digits of these cells that are there.
std::vector<Candidate> candidates_of(const Position& position, const CellSet& cells, DigitSet digits);

// The houses (a line, perhaps a box) that two cells share.
std::vector<House> shared_houses(const Shape& shape, Cell one, Cell other);

// Where one line of an argument is all that is needed: some cell of the pattern holds a digit outside it.
inline Line pattern_line() { return lone(Constraint::of_pattern(0)); }

// Passes steps on, each set of eliminations once, and none without any.
class OnceEach {
 public:
  explicit OnceEach(StepSink& sink) : sink_(sink) {}
  // False when the sink has had enough.
  bool take(Step step);

 private:
  StepSink& sink_;
  std::set<std::vector<Candidate>> seen_;
};

// All rectangles of two rows, two columns and two boxes, open or not, by rows, then columns. The answer false of a visit
// ends it.
template <typename Visit>
void for_each_rectangle(const Shape& shape, Visit visit) {
  const int side = shape.side();
  for (int row = 0; row < side; ++row) {
    for (int lower = row + 1; lower < side; ++lower) {
      const bool same_band = row / shape.box_rows() == lower / shape.box_rows();
      for (int column = 0; column < side; ++column) {
        for (int right = column + 1; right < side; ++right) {
          if (same_band == (column / shape.box_columns() == right / shape.box_columns())) continue;
          if (!visit(Corners{shape.cell_at(row, column), shape.cell_at(row, right), shape.cell_at(lower, column), shape.cell_at(lower, right)})) return;
        }
      }
    }
  }
}

// Those with four open corners which all have the two candidates of a plain one, that is, of one with no others. Where
// no corner is plain, nothing follows for any technique here.
template <typename Visit>
void for_each_deadly_rectangle(const Position& position, Visit visit) {
  for_each_rectangle(position.shape(), [&](const Corners& corners) {
    DigitSet common = position.shape().digits();
    bool has_plain = false;
    for (const Cell corner : corners) {
      common &= position.candidates(corner);
      has_plain = has_plain || position.candidates(corner).size() == 2;
    }
    if (!has_plain || common.size() != 2) return true;
    DeadlyRectangle found{corners, common, {}};
    for (std::size_t i = 0; i < 4; ++i) found.extras[i] = position.candidates(corners[i]) - common;
    return visit(found);
  });
}

// The four sides: numbers of two corners in a line.
inline constexpr std::array<std::array<std::size_t, 2>, 4> kSides = {{{0, 1}, {2, 3}, {0, 2}, {1, 3}}};

// Those of which just the two corners of a side (the roof) have extras: visit(rectangle, roof's corners).
template <typename Visit>
void for_each_roof(const Position& position, Visit visit) {
  for_each_deadly_rectangle(position, [&](const DeadlyRectangle& rectangle) {
    const CellSet rich = rectangle.rich();
    for (const auto& side : kSides) {
      const std::array<Cell, 2> roof = {rectangle.corners[side[0]], rectangle.corners[side[1]]};
      if (rich != (CellSet::of(roof[0]) | CellSet::of(roof[1]))) continue;
      if (!visit(rectangle, roof)) return false;
    }
    return true;
  });
}

}  // namespace cp::deduce
