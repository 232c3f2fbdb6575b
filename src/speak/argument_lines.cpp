// SPDX-License-Identifier: Apache-2.0
#include "speak/argument_lines.h"

namespace cp {

using Kind = Constraint::Kind;

std::vector<Candidate> candidates_left(const ArgumentReason& reason, const Constraint& fact, const Position& position) {
  std::vector<Candidate> candidates;
  if (fact.kind == Kind::kCell) {
    for (const Digit digit : position.candidates(fact.cell())) candidates.push_back({fact.cell(), digit});
  } else if (fact.kind == Kind::kHouse) {
    for (const Cell cell : position.shape().cells(fact.house())) {
      if (position.candidates(cell).has(fact.digit)) candidates.push_back({cell, fact.digit});
    }
  } else {
    const DeadlyPattern& pattern = reason.patterns[fact.place];
    for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
      for (const Digit digit : position.candidates(pattern.cells[i]) - pattern.digits[i]) candidates.push_back({pattern.cells[i], digit});
    }
  }
  return candidates;
}

bool carry_out_line(const Line& line, Position& position) {
  const Shape& shape = position.shape();
  std::vector<Candidate> falls;
  int right = 0;
  const auto coefficient = [&](const Candidate& candidate) {
    int sum = 0;
    for (const LinearTerm& term : line.terms) {
      const bool is_in = term.constraint.kind == Kind::kCell ? term.constraint.cell() == candidate.cell
                                                             : term.constraint.digit == candidate.digit && shape.cells(term.constraint.house()).has(candidate.cell);
      sum += is_in ? term.multiplier : 0;
    }
    return sum;
  };
  for (const LinearTerm& term : line.terms) right += term.multiplier;
  for (const Cell cell : position.placed()) right -= coefficient({cell, *position.digit_at(cell)});
  if (right < 0) return true;
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) {
      if (coefficient({cell, digit}) > right) falls.push_back({cell, digit});
    }
  }
  for (const Candidate& gone : falls) position.eliminate(gone);
  return false;
}

std::vector<Candidate> fallen(const Position& before, const Position& after) {
  std::vector<Candidate> gone;
  for (const Cell cell : before.open()) {
    for (const Digit digit : before.candidates(cell) - after.candidates(cell)) gone.push_back({cell, digit});
  }
  return gone;
}

}  // namespace cp
