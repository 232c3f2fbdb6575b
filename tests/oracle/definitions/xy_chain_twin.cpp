// SPDX-License-Identifier: Apache-2.0
// A chain over cells with two candidates between two cells for the same digit, four cells or more at the shortest.
#include "oracle/definitions/plain_chain.h"

namespace cp::oracle {

Conclusions xy_chain_twin(const Position& position) {
  Conclusions found;
  for (const auto& [ends, links] : joined_ends(position, links_of_cells(position))) {
    const auto& [one, other] = ends;
    if (one == other || links < 4 || one.begin()->digit != other.begin()->digit) continue;
    note_as_new(found, excluded_by_both(position, one, other));
  }
  return found;
}

}  // namespace cp::oracle
