// SPDX-License-Identifier: Apache-2.0
// Walks over almost locked sets, by definition; shared by the twins of two, three and more sets.
#pragma once

#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

// What walks of `fewest` to `most` sets strike out where no walk of fewer sets joins the same cells for the digit.
Conclusions plain_set_walks(const Position& position, std::size_t fewest, std::size_t most);

}  // namespace cp::oracle
