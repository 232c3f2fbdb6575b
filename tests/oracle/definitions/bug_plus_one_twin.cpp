// SPDX-License-Identifier: Apache-2.0
// Take one candidate away and every open cell has two left, every digit two places or none in each house: the candidate
// is true, and its cell loses the others.
#include <map>

#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

Conclusions bug_plus_one_twin(const Position& position) {
  Conclusions found;
  std::set<Cell> open;
  for (const House house : all_houses(position)) open.merge(open_cells(position, house));
  for (const Candidate& extra : candidates_there(position, open, all_digits(position))) {
    std::map<std::pair<House, Digit>, int> times;
    bool is_even = true;
    for (const Cell cell : open) {
      std::set<Digit> digits = digits_in(position, {cell});
      if (cell == extra.cell) digits.erase(extra.digit);
      is_even = is_even && digits.size() == 2;
      for (const House house : position.shape().houses_of(cell)) {
        for (const Digit digit : digits) ++times[{house, digit}];
      }
    }
    for (const auto& [where, count] : times) is_even = is_even && count == 2;
    if (is_even) note_rectangle(found, candidates_there(position, {extra.cell}, minus(all_digits(position), {extra.digit})));
  }
  return found;
}

}  // namespace cp::oracle
