// SPDX-License-Identifier: Apache-2.0
// Is every given needed?
#pragma once

#include "exact/solve.h"

namespace cp {

// The position made of these givens and nothing else; other placements and struck candidates are forgotten.
Position from_givens(const Position& puzzle, const CellSet& cells);

// The givens that can each be taken away alone with the puzzle staying proper (not necessarily two of them together).
// Empty for a minimal puzzle. Precondition: the givens make a proper puzzle; otherwise the set is empty.
CellSet redundant_givens(const Position& puzzle);

// A proper puzzle none of whose givens can be taken away.
bool is_minimal(const Position& puzzle);

}  // namespace cp
