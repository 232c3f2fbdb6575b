// SPDX-License-Identifier: Apache-2.0
// What can a teacher claim? The sentences of docs/formats/claim.md as a tree, with their plain meaning on a full grid.
#pragma once

#include <array>
#include <vector>

#include "exact/full_grid.h"
#include "step/balance_reason.h"

namespace cp {

// Cells, each so many times. A cell listed in two houses of a list counts twice where copies are counted.
struct CellCount {
  Cell cell;
  int times = 1;

  friend constexpr auto operator<=>(const CellCount&, const CellCount&) = default;
};
using CellGroup = std::vector<CellCount>;  // ordered by cell, none twice, times > 0

CellSet cells_of(const CellGroup& group);
int size_of(const CellGroup& group);  // with repetitions

struct Claim {
  enum class Kind {
    kAll,     // every part holds ("and")
    kAny,     // some part holds ("or"; "if a then b" is: not a, or b)
    kNot,     // its one part does not hold
    kValues,  // every cell of `left` holds one of `digits`
    kSame,    // copies of each digit: in `left` as many as in `right` plus `surplus`
    kCount,   // between `least` and `most` cells of `left` hold one of `digits`
  };

  Kind kind = Kind::kAll;
  std::vector<Claim> parts;
  CellGroup left;
  CellGroup right;
  DigitCounts surplus{};
  DigitSet digits;
  int least = 0;
  int most = 0;
};

// Is the claim true in this grid? The meaning of claims, word for word: everything else is measured against it.
bool holds_in(const Claim& claim, const FullGrid& grid);

// The cells it speaks about.
CellSet mentioned(const Claim& claim);

}  // namespace cp
