// SPDX-License-Identifier: Apache-2.0
// A candidate that singles take away whichever candidate of some cell is supposed, none of which is impossible.
#include "oracle/definitions/plain_supposing.h"

namespace cp::oracle {

Conclusions cell_forcing_chain_twin(const Position& position) { return forced_by_all(position, cells_to_split(position), false, false); }

}  // namespace cp::oracle
