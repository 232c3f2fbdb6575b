// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_exclusion.h"

namespace cp::oracle {

Excluded excluded_pairs(const Position& position) {
  Excluded excluded;
  for (const Cell one : position.open()) {
    for (const Cell other : position.open()) {
      for (const Digit digit : all_digits(position)) {
        if (sees(position, one, other) && position.has({one, digit}) && position.has({other, digit})) excluded.insert({{one, digit}, {other, digit}});
      }
    }
  }
  for (const PlainSet& set : plain_almost_locked_sets(position)) {
    for (const Digit first : set.digits) {
      for (const Digit second : minus(set.digits, {first})) {
        const std::set<Candidate> takers = plain_seeing_all(position, holders(position, set.cells, second), second);
        for (const Candidate& one : plain_seeing_all(position, holders(position, set.cells, first), first)) {
          for (const Candidate& other : takers) {
            if (sees(position, one.cell, other.cell)) excluded.insert({one, other});
          }
        }
      }
    }
  }
  return excluded;
}

bool excludes_a_cell(const Position& position, const Excluded& excluded, Candidate candidate) {
  for (const Cell other : position.open()) {
    bool leaves_nothing = sees(position, candidate.cell, other) && position.candidates(other).size() >= 2;
    for (const Digit digit : position.candidates(other)) leaves_nothing = leaves_nothing && excluded.contains({candidate, {other, digit}});
    if (leaves_nothing) return true;
  }
  return false;
}

}  // namespace cp::oracle
