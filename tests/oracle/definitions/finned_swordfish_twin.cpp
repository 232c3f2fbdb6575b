// SPDX-License-Identifier: Apache-2.0
// A whole fish of three lines with fins in one box.
#include "oracle/definitions/plain_finned.h"

namespace cp::oracle {

Conclusions finned_swordfish_twin(const Position& position) { return plain_finned(position, 3, true); }

}  // namespace cp::oracle
