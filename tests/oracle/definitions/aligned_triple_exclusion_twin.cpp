// SPDX-License-Identifier: Apache-2.0
// A value with which every two values of two other cells in the same house are out, but of neither of them alone.
#include "oracle/definitions/plain_exclusion.h"

namespace cp::oracle {

namespace {

// Is there a cell that sees all three and has just these three candidates?
bool empties_a_cell(const Position& position, const std::set<Candidate>& three) {
  for (const Cell cell : position.open()) {
    bool is_emptied = digits_in(position, {cell}).size() == three.size();
    for (const Candidate& each : three) is_emptied = is_emptied && position.has({cell, each.digit}) && sees(position, cell, each.cell);
    if (is_emptied) return true;
  }
  return false;
}

bool leaves_no_two(const Position& position, const Excluded& excluded, Candidate candidate, Cell one, Cell other) {
  for (const Digit first : position.candidates(one)) {
    for (const Digit second : position.candidates(other)) {
      const Candidate a{one, first}, b{other, second};
      const bool is_out = excluded.contains({candidate, a}) || excluded.contains({candidate, b}) || excluded.contains({a, b});
      if (!is_out && !empties_a_cell(position, {candidate, a, b})) return false;
    }
  }
  return true;
}

}  // namespace

Conclusions aligned_triple_exclusion_twin(const Position& position) {
  Conclusions found;
  const Excluded excluded = excluded_pairs(position);
  std::set<Candidate> of_pairs;
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) {
      if (excludes_a_cell(position, excluded, {cell, digit})) of_pairs.insert({cell, digit});
    }
  }
  for (const House house : all_houses(position)) {
    for (const std::set<Cell>& three : choices(open_cells(position, house), 3)) {
      for (const Cell cell : three) {
        const std::set<Cell> others = minus(three, {cell});
        const Cell one = *others.begin(), other = *others.rbegin();
        for (const Digit digit : position.candidates(cell)) {
          if (of_pairs.contains({cell, digit})) continue;
          const bool have_two = position.candidates(one).size() >= 2 && position.candidates(other).size() >= 2;
          if (have_two && leaves_no_two(position, excluded, {cell, digit}, one, other)) note_new(found, {{cell, digit}});
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
