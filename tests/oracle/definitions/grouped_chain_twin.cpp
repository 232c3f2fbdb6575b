// SPDX-License-Identifier: Apache-2.0
// A chain that may also use houses whose places lie in two overlaps of box and line; two links or more, between ends that no
// chain without such houses joins.
#include "oracle/definitions/plain_chain.h"

namespace cp::oracle {

Conclusions grouped_chain_twin(const Position& position) {
  Conclusions found;
  StrongLinks links = links_of_cells(position);
  links.merge(links_of_houses(position));
  const auto plain = joined_ends(position, links);
  links.merge(links_of_overlaps(position));
  for (const auto& [ends, count] : joined_ends(position, links)) {
    if (count < 2 || plain.contains(ends)) continue;
    note_as_new(found, excluded_by_both(position, ends.first, ends.second));
  }
  return found;
}

}  // namespace cp::oracle
