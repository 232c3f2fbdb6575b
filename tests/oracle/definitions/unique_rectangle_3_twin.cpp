// SPDX-License-Identifier: Apache-2.0
// Two corners of a rectangle, in a house, with more than its pair: the extras and one to three other cells of the house have
// as many digits as there are cells, counting the two corners once. No part of them does. The digits leave the rest.
#include "oracle/definitions/plain_rectangles.h"

namespace cp::oracle {

namespace {

// Do some of the cells, not all, with or without the corners' extras, have no more digits than they are?
bool has_smaller_part(const Position& position, const std::set<Cell>& cells, const std::set<Digit>& extras) {
  for (std::size_t size = 0; size <= cells.size(); ++size) {
    for (const std::set<Cell>& part : choices(cells, size)) {
      std::set<Digit> digits = digits_in(position, part);
      if (size > 0 && digits.size() <= size) return true;
      digits.insert(extras.begin(), extras.end());
      if (size < cells.size() && digits.size() <= size + 1) return true;
    }
  }
  return false;
}

}  // namespace

Conclusions unique_rectangle_3_twin(const Position& position) {
  Conclusions found;
  for (const PlainRectangle& rectangle : plain_pair_rectangles(position)) {
    for (const House house : all_houses(position)) {
      if (rectangle.rich.size() != 2 || !lies_in(position, rectangle.rich, house)) continue;
      const std::set<Cell> others = minus(open_cells(position, house), rectangle.rich);
      for (std::size_t size = 1; size <= 3; ++size) {
        for (const std::set<Cell>& cells : choices(others, size)) {
          std::set<Digit> digits = digits_in(position, cells);
          digits.insert(rectangle.extras.begin(), rectangle.extras.end());
          if (digits.size() != size + 1 || has_smaller_part(position, cells, rectangle.extras)) continue;
          note_rectangle(found, candidates_there(position, minus(others, cells), digits));
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
