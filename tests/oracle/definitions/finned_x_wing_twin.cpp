// SPDX-License-Identifier: Apache-2.0
// A whole fish of two lines with fins in one box.
#include "oracle/definitions/plain_finned.h"

namespace cp::oracle {

Conclusions finned_x_wing_twin(const Position& position) { return plain_finned(position, 2, true); }

}  // namespace cp::oracle
