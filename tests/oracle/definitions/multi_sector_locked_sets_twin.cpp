// SPDX-License-Identifier: Apache-2.0
// Rows crossing columns: as many open cells as digits fit, each counted by rows or by columns. Numbers instead of sets where
// there are a hundred thousand grids to look at.
#include <array>
#include <bitset>

#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

namespace {

using Lines = std::vector<std::set<House>>;

Lines line_choices(const Position& position, HouseKind kind) {
  Lines found;
  for (std::size_t size = 3; size <= 5; ++size) {
    for (const auto& lines : choices(houses_of_kind(position, kind), size)) found.push_back(lines);
  }
  return found;
}

// The open cells of the grid, and per digit the rows and columns of it with a place for the digit.
struct Counted {
  std::vector<Cell> cells;
  std::array<std::bitset<48>, 9> rows, columns;
};

Counted count(const Position& position, const std::set<House>& rows, const std::set<House>& columns) {
  Counted counted;
  for (const House row : rows) {
    for (const House column : columns) {
      const Cell cell = position.shape().cell_at(position.shape().number(row), position.shape().number(column));
      if (position.is_placed(cell)) continue;
      counted.cells.push_back(cell);
      for (const Digit digit : position.candidates(cell)) counted.rows[digit.index][row.index] = counted.columns[digit.index][column.index] = true;
    }
  }
  return counted;
}

bool has_locked_line(const Position& position, const std::set<Cell>& grid, const std::set<House>& lines) {
  for (const House line : lines) {
    const std::set<Cell> cells = minus(grid, minus(grid, open_cells(position, line)));
    if (digits_in(position, cells).size() <= cells.size()) return true;
  }
  return false;
}

}  // namespace

Conclusions multi_sector_locked_sets_twin(const Position& position) {
  Conclusions found;
  if (position.shape().side() > 9) return found;
  const Lines column_choices = line_choices(position, HouseKind::kColumn);
  for (const std::set<House>& rows : line_choices(position, HouseKind::kRow)) {
    for (const std::set<House>& columns : column_choices) {
      const Counted grid = count(position, rows, columns);
      std::size_t fits = 0;
      for (std::size_t digit = 0; digit < 9; ++digit) fits += std::min(grid.rows[digit].count(), grid.columns[digit].count());
      if (fits != grid.cells.size()) continue;
      const std::set<Cell> cells(grid.cells.begin(), grid.cells.end());
      if (has_locked_line(position, cells, rows) || has_locked_line(position, cells, columns)) continue;
      std::set<Candidate> struck;
      for (const Digit digit : all_digits(position)) {
        const std::size_t by_rows = grid.rows[digit.index].count(), by_columns = grid.columns[digit.index].count();
        for (const House line : all_houses(position)) {
          const bool counts = (by_rows <= by_columns && grid.rows[digit.index][line.index]) || (by_columns <= by_rows && grid.columns[digit.index][line.index]);
          if (counts) struck.merge(candidates_there(position, minus(open_cells(position, line), cells), {digit}));
        }
      }
      note_new(found, struck);
    }
  }
  return found;
}

}  // namespace cp::oracle
