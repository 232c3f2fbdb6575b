// SPDX-License-Identifier: Apache-2.0
// A fish of one size, by its definition; shared by the three twins.
#pragma once

#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

// `size` lines of one direction whose places for a digit lie in `size` lines of the other, while no fewer of them do the
// same: the digit leaves the rest of those other lines.
Conclusions plain_fish(const Position& position, std::size_t size);

}  // namespace cp::oracle
