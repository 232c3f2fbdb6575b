// SPDX-License-Identifier: Apache-2.0
// Cells of a line and a box, two or more of them in both: as many digits as cells, the two sides without a common digit.
#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

namespace {

// Up to four of the cells with more digits than cells.
std::vector<std::set<Cell>> sides(const Position& position, const std::set<Cell>& among) {
  std::vector<std::set<Cell>> found;
  for (std::size_t size = 1; size <= 4; ++size) {
    for (const std::set<Cell>& cells : choices(among, size)) {
      if (digits_in(position, cells).size() > size) found.push_back(cells);
    }
  }
  return found;
}

// The sides that have fewer new digits than cells.
std::vector<std::set<Cell>> helping(const Position& position, const std::vector<std::set<Cell>>& all, const std::set<Digit>& digits) {
  std::vector<std::set<Cell>> found;
  for (const std::set<Cell>& side : all) {
    if (minus(digits_in(position, side), digits).size() < side.size()) found.push_back(side);
  }
  return found;
}

void note_cross(const Position& position, House line, House box, Conclusions& found) {
  const std::set<Cell> of_line = open_cells(position, line), of_box = open_cells(position, box);
  const std::set<Cell> crossing = minus(of_line, minus(of_line, of_box));
  const auto line_sides = sides(position, minus(of_line, crossing)), box_sides = sides(position, minus(of_box, crossing));
  for (std::size_t size = 2; size <= crossing.size(); ++size) {
    for (const std::set<Cell>& middle : choices(crossing, size)) {
      const std::set<Digit> digits = digits_in(position, middle);
      if (digits.size() < size + 2) continue;
      for (const std::set<Cell>& in_line : helping(position, line_sides, digits)) {
        const std::set<Digit> line_digits = digits_in(position, in_line);
        for (const std::set<Cell>& in_box : helping(position, box_sides, digits)) {
          if (minus(line_digits, digits_in(position, in_box)) != line_digits) continue;
          std::set<Cell> all = middle;
          all.insert(in_line.begin(), in_line.end());
          all.insert(in_box.begin(), in_box.end());
          if (digits_in(position, all).size() != all.size()) continue;
          std::set<Candidate> struck;
          for (const Digit digit : digits_in(position, all)) struck.merge(plain_seeing_all(position, holders(position, all, digit), digit));
          note_new(found, struck);
        }
      }
    }
  }
}

}  // namespace

Conclusions sue_de_coq_twin(const Position& position) {
  Conclusions found;
  for (const House box : houses_of_kind(position, HouseKind::kBox)) {
    for (const House line : minus(all_houses(position), houses_of_kind(position, HouseKind::kBox))) note_cross(position, line, box, found);
  }
  return found;
}

}  // namespace cp::oracle
