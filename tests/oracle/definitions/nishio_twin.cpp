// SPDX-License-Identifier: Apache-2.0
// A candidate from which singles lead to an impossibility, though they do not take it away by themselves.
#include "oracle/definitions/plain_supposing.h"

namespace cp::oracle {

Conclusions nishio_twin(const Position& position) {
  Conclusions found;
  const Followed without = followed(position, false);
  for (const Candidate& each : open_candidates(position)) {
    if (without.is_impossible || without.gone.contains(each)) continue;
    if (followed_from(position, each, false).is_impossible) note_as_new(found, {each});
  }
  return found;
}

}  // namespace cp::oracle
