// SPDX-License-Identifier: Apache-2.0
// A fish of four houses, lines of one direction and boxes in lines of the other and boxes.
#include "oracle/definitions/plain_mixed.h"

namespace cp::oracle {

Conclusions franken_jellyfish_twin(const Position& position) { return plain_franken(position, 4); }

}  // namespace cp::oracle
