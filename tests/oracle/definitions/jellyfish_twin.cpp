// SPDX-License-Identifier: Apache-2.0
// A fish of four lines.
#include "oracle/definitions/plain_fish.h"

namespace cp::oracle {

Conclusions jellyfish_twin(const Position& position) { return plain_fish(position, 4); }

}  // namespace cp::oracle
