// SPDX-License-Identifier: Apache-2.0
// A fish of three houses, lines of one direction and boxes in lines of the other and boxes.
#include "oracle/definitions/plain_mixed.h"

namespace cp::oracle {

Conclusions franken_swordfish_twin(const Position& position) { return plain_franken(position, 3); }

}  // namespace cp::oracle
