// SPDX-License-Identifier: Apache-2.0
// A chain over cells with two candidates and houses with two places, two links or more, between ends that can both be true.
#include "oracle/definitions/plain_chain.h"

namespace cp::oracle {

Conclusions alternating_chain_twin(const Position& position) {
  Conclusions found;
  StrongLinks links = links_of_cells(position);
  links.merge(links_of_houses(position));
  for (const auto& [ends, count] : joined_ends(position, links)) {
    const auto& [one, other] = ends;
    if (count >= 2 && !exclude_places(position, one, other)) note_as_new(found, excluded_by_both(position, one, other));
  }
  return found;
}

}  // namespace cp::oracle
