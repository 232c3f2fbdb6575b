// SPDX-License-Identifier: Apache-2.0
// A fish of four lines with fins in one box, one line of which keeps one place without them.
#include "oracle/definitions/plain_finned.h"

namespace cp::oracle {

Conclusions sashimi_jellyfish_twin(const Position& position) { return plain_finned(position, 4, false); }

}  // namespace cp::oracle
