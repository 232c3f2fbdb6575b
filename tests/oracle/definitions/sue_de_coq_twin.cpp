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

void note_cross(const Position& position, House line, House box, Conclusions& found) {
  const std::set<Cell> of_line = open_cells(position, line), of_box = open_cells(position, box);
  const std::set<Cell> crossing = minus(of_line, minus(of_line, of_box));
  for (const std::set<Cell>& in_line : sides(position, minus(of_line, crossing))) {
    const std::set<Digit> line_digits = digits_in(position, in_line);
    for (const std::set<Cell>& in_box : sides(position, minus(of_box, crossing))) {
      const std::set<Digit> box_digits = digits_in(position, in_box);
      if (minus(line_digits, box_digits) != line_digits) continue;
      for (std::size_t size = 2; size <= crossing.size(); ++size) {
        for (const std::set<Cell>& middle : choices(crossing, size)) {
          const std::set<Digit> digits = digits_in(position, middle);
          const std::size_t line_adds = minus(line_digits, digits).size(), box_adds = minus(box_digits, digits).size();
          if (digits.size() < size + 2 || line_adds >= in_line.size() || box_adds >= in_box.size()) continue;
          if (digits.size() + line_adds + box_adds != size + in_line.size() + in_box.size()) continue;
          std::set<Cell> all = middle;
          all.insert(in_line.begin(), in_line.end());
          all.insert(in_box.begin(), in_box.end());
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
