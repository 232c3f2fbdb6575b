// SPDX-License-Identifier: Apache-2.0
// The same board in other clothes: lines moved inside their bands and stacks, bands and stacks moved, the board turned over
// its diagonal, digits renamed. Whatever holds of a puzzle holds of its image.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "base/rng.h"
#include "grid/position.h"

namespace cp {

// A plain value. First the board is turned over its diagonal (or not), then row i goes to row `row_to[i]` and column j to
// column `column_to[j]`, and digit d becomes `digit_to[d]`. Entries beyond the side of the shape mean nothing.
class Transform {
 public:
  // Changes nothing.
  explicit Transform(const Shape& shape);
  // One of all, each equally often. Same seed, same transform.
  static Transform random(const Shape& shape, std::uint64_t seed);

  bool transposes = false;
  std::array<std::uint8_t, kMaxSide> row_to{};
  std::array<std::uint8_t, kMaxSide> column_to{};
  std::array<std::uint8_t, kMaxSide> digit_to{};

  [[nodiscard]] const Shape& shape() const { return *shape_; }
  // Do lines of a band or stack stay together, and does each map name everything once? Boards whose boxes are not square
  // can not be turned over.
  [[nodiscard]] bool is_valid() const;

  // Where things go. Preconditions: is_valid(), and what is given is of the same shape.
  [[nodiscard]] Cell image(Cell cell) const;
  [[nodiscard]] Digit image(Digit digit) const { return Digit(digit_to[digit.index]); }
  [[nodiscard]] Candidate image(const Candidate& candidate) const { return {image(candidate.cell), image(candidate.digit)}; }
  [[nodiscard]] House image(House house) const;
  [[nodiscard]] CellSet image(const CellSet& cells) const;
  // Givens stay givens, placed digits stay placed, candidates go along.
  [[nodiscard]] Position image(const Position& position) const;

  // First this one, then the other.
  [[nodiscard]] Transform then(const Transform& next) const;
  // The way back: t.then(t.inverse()) changes nothing.
  [[nodiscard]] Transform inverse() const;

  friend bool operator==(const Transform& a, const Transform& b);

 private:
  const Shape* shape_;
};

// All orders of the rows that keep bands together, each as the list of source rows from top to bottom, in lexicographic
// order (1296 for nine rows). Columns are the same with the boxes on their side: `box_lines` is the height of a box for
// rows and its width for columns. Meant for small boards: the number grows fast.
std::vector<std::array<std::uint8_t, kMaxSide>> line_orders(int side, int box_lines);

}  // namespace cp
