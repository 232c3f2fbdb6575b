// SPDX-License-Identifier: Apache-2.0
// A rectangle without givens. For a pair of digits, each placed corner holds one of them, and opposite corners that are placed
// the same one. One corner open: it must not complete the rectangle. Two open, each with one digit of the pair and
// the same further one: this leaves the cells that see both.
#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

Conclusions avoidable_rectangle_twin(const Position& position) {
  Conclusions found;
  for (const std::set<Cell>& corners : plain_rectangles(position)) {
    std::set<Cell> open;
    std::set<Digit> placed;
    for (const Cell corner : corners) {
      if (position.is_placed(corner)) placed.insert(*position.digit_at(corner));
      else open.insert(corner);
    }
    for (const std::set<Digit>& pair : choices(all_digits(position), 2)) {
      if (!minus(placed, pair).empty() || placed.empty()) continue;
      if (open.size() == 1 && placed.size() == 2) note_rectangle(found, candidates_there(position, open, pair));
      if (open.size() != 2) continue;
      const std::set<Digit> further = minus(digits_in(position, open), pair);
      bool fits = further.size() == 1;
      for (const Cell cell : open) fits = fits && digits_in(position, {cell}).size() == 2 && minus(digits_in(position, {cell}), pair) == further;
      if (fits) note_rectangle(found, candidates_there(position, seeing_all(position, open), further));
    }
  }
  return found;
}

}  // namespace cp::oracle
