// SPDX-License-Identifier: Apache-2.0
// A fish of four houses with lines of one direction on both sides or of both on one.
#include "oracle/definitions/plain_mixed.h"

namespace cp::oracle {

Conclusions mutant_jellyfish_twin(const Position& position) { return plain_mutant(position, 4); }

}  // namespace cp::oracle
