// SPDX-License-Identifier: Apache-2.0
// A fish of two lines with fins in one box, one line of which keeps one place without them.
#include "oracle/definitions/plain_finned.h"

namespace cp::oracle {

Conclusions sashimi_x_wing_twin(const Position& position) { return plain_finned(position, 2, false); }

}  // namespace cp::oracle
