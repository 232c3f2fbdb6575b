// SPDX-License-Identifier: Apache-2.0
// A candidate that singles take away whichever place of some digit in some house is supposed, none of which is impossible.
#include "oracle/definitions/plain_supposing.h"

namespace cp::oracle {

Conclusions house_forcing_chain_twin(const Position& position) { return forced_by_all(position, houses_to_split(position), false, false); }

}  // namespace cp::oracle
