// SPDX-License-Identifier: Apache-2.0
// The same puzzle in other clothes, for exercises, with its argument carried along.
#pragma once

#include <optional>

#include "compose/way_in.h"
#include "grid/transform.h"

namespace cp {

struct Variation {
  Position puzzle;
  WayIn way;   // the argument in the new clothes: position, houses, what falls, and a reason found there
};

// Empty when the argument does not hold in the new clothes, which would be a fault of ours. Precondition: way.stage is at
// least kMoved, and its step is one of a balance.
std::optional<Variation> vary(const Position& puzzle, const WayIn& way, const Transform& clothes);

}  // namespace cp
