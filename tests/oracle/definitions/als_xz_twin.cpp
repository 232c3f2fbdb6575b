// SPDX-License-Identifier: Apache-2.0
// A walk of two sets.
#include "oracle/definitions/plain_walks.h"

namespace cp::oracle {

Conclusions als_xz_twin(const Position& position) { return plain_set_walks(position, 2, 2); }

}  // namespace cp::oracle
