// SPDX-License-Identifier: Apache-2.0
// Multi-sector locked sets: the cells where some rows and some columns cross. Each digit is counted by the rows of the grid in
// which these cells can hold it, or by the columns, whichever are fewer: so often it fits at most. When all counts together
// are as many as the open cells, every digit fits exactly so often: a digit counted by rows falls in the rest of these
// rows, one counted by columns in the rest of these columns, one with equal counts in both. Reason: one sum.
// Searched: grids of three to five rows and three to five columns, on shapes up to 9x9; boxes are not counted with. Each
// row and column of the grid has open cells and more digits than these (or it is a naked subset by itself).
// Cost: all such grids, about 113 000 on 9x9, most of which are dismissed after a few digits. Equal conclusions once.
#include <algorithm>
#include <array>
#include <bit>
#include <utility>
#include <vector>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/tables.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

using deduce::Mask;

constexpr std::string_view kId = "multi-sector-locked-sets";
constexpr int kLargestSide = 9;
constexpr int kFewestLines = 3;
constexpr int kMostLines = 5;

class GridSearch {
 public:
  GridSearch(const Position& position, StepSink& sink) : position_(position), sink_(sink), side_(position.shape().side()) {
    const unsigned choices = 1U << side_;
    for (const Digit digit : position.shape().digits()) {
      const deduce::DigitTable table(position, digit);
      for (unsigned lines = 1; lines < choices; ++lines) {
        const auto lowest = static_cast<std::size_t>(std::countr_zero(lines));
        const unsigned others = lines & (lines - 1);
        columns_with_[digit.index][lines] = static_cast<Mask>(columns_with_[digit.index][others] | table.columns_of[lowest]);
        rows_with_[digit.index][lines] = static_cast<Mask>(rows_with_[digit.index][others] | table.rows_of[lowest]);
      }
      for (std::size_t row = 0; row < kLargestSide; ++row) open_columns_[row] = static_cast<Mask>(open_columns_[row] | table.columns_of[row]);
      if (!position.places(digit).is_empty()) open_digits_.push_back(digit.index);
    }
    for (unsigned lines = 0; lines < choices; ++lines) {
      if (std::popcount(lines) >= kFewestLines && std::popcount(lines) <= kMostLines) choices_.push_back(static_cast<Mask>(lines));
    }
  }

  void run() {
    for (const Mask rows : choices_) {
      for (const Mask columns : choices_) {
        if (is_locked(rows, columns) && !report(rows, columns)) return;
      }
    }
  }

 private:
  [[nodiscard]] bool is_locked(Mask rows, Mask columns) const {
    int room = deduce::is_weakened(kId, deduce::Guard::kSound) ? 1 : 0;
    for (const Digit row : DigitSet(rows)) room += std::popcount(static_cast<Mask>(open_columns_[row.index] & columns));
    for (const std::size_t digit : open_digits_) {
      const int by_rows = std::popcount(static_cast<Mask>(rows_with_[digit][columns] & rows));
      const int by_columns = std::popcount(static_cast<Mask>(columns_with_[digit][rows] & columns));
      room -= std::min(by_rows, by_columns);
      if (room < 0) return false;
    }
    return room == 0;
  }

  // Does each row and column of the grid need the others?
  [[nodiscard]] bool is_true(Mask rows, Mask columns) const {
    const Shape& shape = position_.shape();
    CellSet grid;
    for (const Digit row : DigitSet(rows)) {
      for (const Digit column : DigitSet(columns)) grid.add(shape.cell_at(row.index, column.index));
    }
    for (int line = 0; line < 2 * side_; ++line) {
      const Mask lines = line < side_ ? rows : columns;
      if (((lines >> (line % side_)) & 1U) == 0) continue;
      const CellSet cells = shape.cells(House(line)) & grid & position_.open();
      DigitSet digits;
      for (const Cell cell : cells) digits |= position_.candidates(cell);
      if (digits.size() <= cells.size()) return false;
    }
    return true;
  }

  // The lines of one direction that count the digit, and what it loses in them.
  struct Side {
    std::vector<House> lines;
    CellSet struck;
  };
  [[nodiscard]] Side side_of(Digit digit, const CellSet& grid, Mask lines, House first) const {
    Side side;
    for (const Digit line : DigitSet(lines)) {
      const House house(first.index + line.index);
      const CellSet places = position_.places(house, digit);
      if (!places.meets(grid)) continue;
      side.lines.push_back(house);
      side.struck |= places - grid;
    }
    return side;
  }

  bool report(Mask rows, Mask columns) {
    if (!deduce::is_weakened(kId, deduce::Guard::kTrueSize) && !is_true(rows, columns)) return true;
    const Shape& shape = position_.shape();
    CellSet grid;
    for (const Digit row : DigitSet(rows)) {
      for (const Digit column : DigitSet(columns)) grid.add(shape.cell_at(row.index, column.index));
    }
    grid &= position_.open();
    std::vector<Candidate> struck;
    std::vector<std::pair<Digit, std::vector<Side>>> counted;
    std::size_t scale = 1;
    for (const Digit digit : shape.digits()) {
      const Side by_rows = side_of(digit, grid, rows, shape.row(0));
      const Side by_columns = side_of(digit, grid, columns, shape.column(0));
      std::vector<Side> sides;
      if (by_rows.lines.size() <= by_columns.lines.size()) sides.push_back(by_rows);
      if (by_columns.lines.size() <= by_rows.lines.size()) sides.push_back(by_columns);
      if (sides.size() == 2 && sides[0].struck.is_empty()) sides.erase(sides.begin());
      if (sides.size() == 2 && sides[1].struck.is_empty()) sides.pop_back();
      for (const Side& side : sides) {
        for (const Cell cell : side.struck) struck.push_back({cell, digit});
      }
      scale = std::max(scale, sides.size());
      counted.emplace_back(digit, std::move(sides));
    }
    deduce::tidy(struck);
    if (struck.empty() || !reported_.is_new(struck)) return true;
    return sink_.take({kId, {}, std::move(struck), LinearReason{sum_of(grid, counted, static_cast<int>(scale))}});
  }

  // Where rows and columns count a digit alike, each takes half.
  static std::vector<LinearTerm> sum_of(const CellSet& grid, const std::vector<std::pair<Digit, std::vector<Side>>>& counted, int scale) {
    deduce::SumOfSets sum;
    for (const Cell cell : grid) sum.add_base(Constraint::of(cell), scale);
    for (const auto& [digit, sides] : counted) {
      for (const Side& side : sides) {
        for (const House line : side.lines) sum.add_cover(line, digit, scale / static_cast<int>(sides.size()));
      }
    }
    return sum.terms();
  }

  const Position& position_;
  StepSink& sink_;
  int side_;
  std::array<std::array<Mask, 1U << kLargestSide>, kLargestSide> columns_with_{};  // per digit and some rows: where they can hold it
  std::array<std::array<Mask, 1U << kLargestSide>, kLargestSide> rows_with_{};     // per digit and some columns
  std::vector<std::size_t> open_digits_;
  std::array<Mask, kLargestSide> open_columns_{};
  std::vector<Mask> choices_;
  deduce::Reported reported_;
};

}  // namespace

void multi_sector_locked_sets(const Position& position, StepSink& sink) {
  if (position.shape().side() <= kLargestSide) GridSearch(position, sink).run();
}

}  // namespace cp::techniques
