// SPDX-License-Identifier: Apache-2.0
// The plain techniques run to their common end, as fast as possible and without saying why. For composing and searching,
// where millions of positions are asked. Reaches the same position as repeating the catalogue until nothing fires.
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "grid/position.h"

namespace cp {

// The families of the catalogue that these techniques make up, the plainest first.
inline constexpr std::array<std::string_view, 4> kBasicFamilies = {"single", "locked", "subset", "fish"};
inline bool is_basic_family(std::string_view family) { return std::find(kBasicFamilies.begin(), kBasicFamilies.end(), family) != kBasicFamilies.end(); }
// The same as names for path/selection.h.
inline std::vector<std::string> basic_families() { return {kBasicFamilies.begin(), kBasicFamilies.end()}; }

// Which techniques take part. Naked singles always do. Without hidden singles nothing else does either: the larger
// patterns leave lone places to the hidden single, so without it their end would depend on the order.
struct BasicsGroups {
  bool hidden_singles = true;
  bool locked = true;   // pointing, claiming
  bool subsets = true;  // naked and hidden pairs, triples, quads
  bool fish = true;     // X-wing, swordfish, jellyfish
};

// Applies the chosen techniques until none of them changes anything. The end does not depend on any order.
// False when it turns out that the position contradicts itself: an open cell without candidates, a house without a place
// for a digit, a digit twice in a house. The position is then left as it was.
// Looks at a house or a digit again only after something changed there; makes no Step and allocates nothing.
bool run_basics(Position& position, BasicsGroups groups = {});

}  // namespace cp
