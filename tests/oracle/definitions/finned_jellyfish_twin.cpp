// SPDX-License-Identifier: Apache-2.0
// A whole fish of four lines with fins in one box.
#include "oracle/definitions/plain_finned.h"

namespace cp::oracle {

Conclusions finned_jellyfish_twin(const Position& position) { return plain_finned(position, 4, true); }

}  // namespace cp::oracle
