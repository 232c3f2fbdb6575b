// SPDX-License-Identifier: Apache-2.0
// A value with which every value of another cell is out.
#include "oracle/definitions/plain_exclusion.h"

namespace cp::oracle {

Conclusions aligned_pair_exclusion_twin(const Position& position) {
  Conclusions found;
  const Excluded excluded = excluded_pairs(position);
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) {
      if (excludes_a_cell(position, excluded, {cell, digit})) note_new(found, {{cell, digit}});
    }
  }
  return found;
}

}  // namespace cp::oracle
