// SPDX-License-Identifier: Apache-2.0
// A fish of three lines.
#include "oracle/definitions/plain_fish.h"

namespace cp::oracle {

Conclusions swordfish_twin(const Position& position) { return plain_fish(position, 3); }

}  // namespace cp::oracle
