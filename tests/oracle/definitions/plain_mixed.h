// SPDX-License-Identifier: Apache-2.0
// Fish of lines and boxes, by their definition; shared by the twins of franken and mutant fish.
#pragma once

#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

using HouseKinds = std::set<HouseKind>;

// `size` houses of the first kinds that share no place, `size` others of the second kinds that hold all their places
// (fewer would not do, and none holds a whole base): what is in more of the latter than of the former falls.
// Mutant: lines of one direction on both sides, or of both on one; otherwise at least one box.
void note_mixed(Conclusions& found, const Position& position, std::size_t size, const HouseKinds& base_kinds, const HouseKinds& cover_kinds, bool is_mutant);

Conclusions plain_franken(const Position& position, std::size_t size);
Conclusions plain_mutant(const Position& position, std::size_t size);

}  // namespace cp::oracle
