// SPDX-License-Identifier: Apache-2.0
// A fish of three houses with lines of one direction on both sides or of both on one.
#include "oracle/definitions/plain_mixed.h"

namespace cp::oracle {

Conclusions mutant_swordfish_twin(const Position& position) { return plain_mutant(position, 3); }

}  // namespace cp::oracle
