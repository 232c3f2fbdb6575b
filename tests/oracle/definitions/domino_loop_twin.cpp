// SPDX-License-Identifier: Apache-2.0
// Eight dominoes and the eight houses that hold two of them each; as many cells as links that are needed at least.
#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

namespace {

// The dominoes of two rows and two columns: a line and a box without the crossing of the row and the column.
std::set<std::set<Cell>> dominoes_of(const Position& position, const std::set<House>& rows, const std::set<House>& columns) {
  const Shape& shape = position.shape();
  std::set<std::set<Cell>> dominoes;
  for (const House row : rows) {
    for (const House column : columns) {
      const Cell crossing = shape.cell_at(shape.number(row), shape.number(column));
      const std::set<Cell> box = open_cells(position, shape.box(shape.box_of(crossing)));
      for (const House line : {row, column}) dominoes.insert(minus(minus(box, minus(box, open_cells(position, line))), {crossing}));
    }
  }
  return dominoes;
}

bool is_in(const Position& position, const std::set<Cell>& domino, House house) {
  return minus(domino, open_cells(position, house)).empty();
}

// All choices of fewest links such that each of the dominoes is in one of them.
std::vector<std::set<House>> fewest_links(const Position& position, const std::set<House>& links, const std::set<std::set<Cell>>& dominoes) {
  for (std::size_t size = 0;; ++size) {
    std::vector<std::set<House>> found;
    for (const std::set<House>& chosen : choices(links, size)) {
      bool serves = true;
      for (const auto& domino : dominoes) {
        bool has_link = false;
        for (const House link : chosen) has_link = has_link || is_in(position, domino, link);
        serves = serves && has_link;
      }
      if (serves) found.push_back(chosen);
    }
    if (!found.empty()) return found;
  }
}

// The dominoes that can hold the digit.
std::set<std::set<Cell>> dominoes_with(const Position& position, const std::set<std::set<Cell>>& dominoes, Digit digit) {
  std::set<std::set<Cell>> with;
  for (const auto& domino : dominoes) {
    if (!holders(position, domino, digit).empty()) with.insert(domino);
  }
  return with;
}

// Does each domino have open cells, and more digits than these?
bool is_ring(const Position& position, const std::set<std::set<Cell>>& dominoes) {
  bool is_true = dominoes.size() == 8;
  for (const auto& domino : dominoes) is_true = is_true && !domino.empty() && digits_in(position, domino).size() > domino.size();
  return is_true;
}

void note_ring(const Position& position, const std::set<House>& rows, const std::set<House>& columns, Conclusions& found) {
  const std::set<std::set<Cell>> dominoes = dominoes_of(position, rows, columns);
  if (!is_ring(position, dominoes)) return;
  std::set<House> links = rows;
  links.insert(columns.begin(), columns.end());
  std::set<Cell> cells;
  for (const auto& domino : dominoes) {
    cells.insert(domino.begin(), domino.end());
    links.insert(position.shape().box(position.shape().box_of(*domino.begin())));
  }
  std::size_t fits = 0, fewest = 0;  // no link serves more than two dominoes
  for (const Digit digit : all_digits(position)) fewest += (dominoes_with(position, dominoes, digit).size() + 1) / 2;
  if (fewest > cells.size()) return;
  std::set<Candidate> struck;
  for (const Digit digit : all_digits(position)) {
    const auto served = fewest_links(position, links, dominoes_with(position, dominoes, digit));
    fits += served[0].size();
    for (const std::set<House>& chosen : served) {
      for (const Cell cell : position.places(digit)) {
        std::size_t times = 0;
        for (const House link : chosen) times += position.shape().cells(link).has(cell) ? 1 : 0;
        if (times > (cells.contains(cell) ? 1U : 0U)) struck.insert({cell, digit});
      }
    }
  }
  if (fits == cells.size()) note_new(found, struck);
}

}  // namespace

Conclusions domino_loop_twin(const Position& position) {
  Conclusions found;
  const Shape& shape = position.shape();
  if (shape.side() > 9) return found;
  for (const auto& rows : choices(houses_of_kind(position, HouseKind::kRow), 2)) {
    for (const auto& columns : choices(houses_of_kind(position, HouseKind::kColumn), 2)) {
      const bool two_bands = shape.number(*rows.begin()) / shape.box_rows() != shape.number(*rows.rbegin()) / shape.box_rows();
      const bool two_stacks = shape.number(*columns.begin()) / shape.box_columns() != shape.number(*columns.rbegin()) / shape.box_columns();
      if (two_bands && two_stacks) note_ring(position, rows, columns, found);
    }
  }
  return found;
}

}  // namespace cp::oracle
