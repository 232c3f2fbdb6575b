// SPDX-License-Identifier: Apache-2.0
// Take one candidate away in each of two to four cells, and every open cell has two left, every digit two places or none in
// each house: one of these is true. What is in conflict with each of them falls.
#include <map>

#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

namespace {

bool is_plain_grave(const Position& position, const std::set<Candidate>& candidates) {
  std::map<Cell, int> in_cell;
  std::map<std::pair<House, Digit>, int> in_house;
  for (const Candidate& each : candidates) {
    ++in_cell[each.cell];
    for (const House house : position.shape().houses_of(each.cell)) ++in_house[{house, each.digit}];
  }
  bool is_grave = true;
  for (const auto& [cell, count] : in_cell) is_grave = is_grave && count == 2;
  for (const auto& [place, count] : in_house) is_grave = is_grave && count == 2;
  return is_grave;
}

}  // namespace

Conclusions bug_plus_n_twin(const Position& position) {
  Conclusions found;
  std::set<Cell> open;
  std::set<Cell> three;
  for (const House house : all_houses(position)) open.merge(open_cells(position, house));
  for (const Cell cell : open) {
    const std::size_t count = digits_in(position, {cell}).size();
    if (count < 2 || count > 3) return found;
    if (count == 3) three.insert(cell);
  }
  if (three.size() < 2 || three.size() > 4) return found;
  const std::set<Candidate> all = candidates_there(position, open, all_digits(position));
  for (const std::set<Candidate>& extras : choices(candidates_there(position, three, all_digits(position)), three.size())) {
    if (!is_plain_grave(position, minus(all, extras))) continue;
    std::set<Candidate> struck = minus(all, extras);
    for (const Candidate& extra : extras) {
      const std::set<Cell> seeing = seeing_all(position, {extra.cell});
      std::erase_if(struck, [&](const Candidate& each) { return each.cell != extra.cell && !(each.digit == extra.digit && seeing.contains(each.cell)); });
    }
    note_rectangle(found, struck);
  }
  return found;
}

}  // namespace cp::oracle
