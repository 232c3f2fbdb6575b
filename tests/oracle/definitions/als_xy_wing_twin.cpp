// SPDX-License-Identifier: Apache-2.0
// A walk of three sets.
#include "oracle/definitions/plain_walks.h"

namespace cp::oracle {

Conclusions als_xy_wing_twin(const Position& position) { return plain_set_walks(position, 3, 3); }

}  // namespace cp::oracle
