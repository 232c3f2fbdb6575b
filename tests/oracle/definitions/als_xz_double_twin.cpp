// SPDX-License-Identifier: Apache-2.0
// Two almost locked sets without a common cell, two digits that only one of them can hold.
#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

Conclusions als_xz_double_twin(const Position& position) {
  Conclusions found;
  const std::set<PlainSet> sets = plain_almost_locked_sets(position);
  for (const PlainSet& one : sets) {
    for (const PlainSet& other : sets) {
      if (other < one || minus(one.cells, other.cells) != one.cells) continue;
      std::set<Cell> all = one.cells;
      all.insert(other.cells.begin(), other.cells.end());
      if (are_in_one_house(position, all)) continue;
      std::set<Digit> restricted;
      for (const Digit digit : minus(one.digits, minus(one.digits, other.digits))) {
        if (see_each_other(position, holders(position, one.cells, digit), holders(position, other.cells, digit))) restricted.insert(digit);
      }
      for (const std::set<Digit>& two : choices(restricted, 2)) {
        std::set<Candidate> struck;
        for (const PlainSet& set : {one, other}) {
          for (const Digit digit : minus(set.digits, two)) struck.merge(plain_seeing_all(position, holders(position, set.cells, digit), digit));
        }
        for (const Digit digit : two) {
          std::set<Cell> cells = holders(position, one.cells, digit);
          cells.merge(holders(position, other.cells, digit));
          struck.merge(plain_seeing_all(position, cells, digit));
        }
        note_new(found, struck);
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
