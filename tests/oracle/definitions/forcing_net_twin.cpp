// SPDX-License-Identifier: Apache-2.0
// A candidate that singles, locked candidates and pairs take away in all possible cases of some cell or house.
#include "oracle/definitions/plain_supposing.h"

namespace cp::oracle {

Conclusions forcing_net_twin(const Position& position) {
  if (position.shape().side() > 9) return {};
  std::set<std::set<Candidate>> facts = cells_to_split(position);
  facts.merge(houses_to_split(position));
  return forced_by_all(position, facts, true, true);
}

}  // namespace cp::oracle
