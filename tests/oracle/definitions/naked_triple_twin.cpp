// SPDX-License-Identifier: Apache-2.0
// Three open cells of a house with three candidates between them, no part of them tight: these leave the rest of it.
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions naked_triple_twin(const Position& position) {
  Conclusions found;
  for (const House house : all_houses(position)) {
    const std::set<Cell> open = open_cells(position, house);
    for (const std::set<Cell>& cells : choices(open, 3)) {
      const std::set<Digit> digits = digits_in(position, cells);
      if (digits.size() != 3) continue;
      bool has_smaller = false;
      for (std::size_t size = 1; size < 3; ++size) {
        for (const auto& part : choices(cells, size)) has_smaller = has_smaller || digits_in(position, part).size() <= size;
      }
      if (!has_smaller) note_struck(found, candidates_there(position, minus(open, cells), digits));
    }
  }
  return found;
}

}  // namespace cp::oracle
