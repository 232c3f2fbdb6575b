// SPDX-License-Identifier: Apache-2.0
// A walk of four to six sets.
#include "oracle/definitions/plain_walks.h"

namespace cp::oracle {

Conclusions als_chain_twin(const Position& position) { return plain_set_walks(position, 4, 6); }

}  // namespace cp::oracle
