// SPDX-License-Identifier: Apache-2.0
// A fish of two lines.
#include "oracle/definitions/plain_fish.h"

namespace cp::oracle {

Conclusions x_wing_twin(const Position& position) { return plain_fish(position, 2); }

}  // namespace cp::oracle
