// SPDX-License-Identifier: Apache-2.0
// If a place is empty its partners are filled; what these see is empty; partners again, and so on. A place filled for
// the first time after three such rounds or more makes a pair of ends with the start. What sees both falls.
#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

Conclusions x_chain_twin(const Position& position) {
  Conclusions found;
  for (const Digit digit : all_digits(position)) {
    const std::set<Cell> places = places_in_grid(position, digit);
    for (const Cell start : places) {
      std::set<Cell> empty = {start};
      std::set<Cell> filled;
      for (std::size_t round = 1; round <= places.size(); ++round) {
        std::set<Cell> now = filled;
        for (const Cell cell : empty) now.merge(partners(position, digit, cell));
        for (const Cell end : minus(now, filled)) {
          if (round >= 3 && end != start) note_once(found, seen_from_both(position, digit, start, end));
        }
        filled = now;
        for (const Cell cell : places) {
          for (const Cell other : filled) {
            if (see_each_other(position, cell, other)) empty.insert(cell);
          }
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
