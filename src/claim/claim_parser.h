// SPDX-License-Identifier: Apache-2.0
// Reads claims, groups of cells and footings as a teacher types them. The grammar is docs/formats/claim.md.
#pragma once

#include <string_view>

#include "base/result.h"
#include "claim/vocabulary.h"

namespace cp {

// What a claim may rest on. The rule that a cell holds exactly one digit always counts.
struct Footing {
  bool has_marks = true;        // the candidates as they stand; otherwise only the digits placed
  std::vector<House> houses;    // whose digits all differ; ordered
  std::vector<int> balances;    // by their number in the vocabulary
  bool has_earlier = false;     // all earlier claims of the script
  std::vector<int> claims;      // or these, by their number from 1

  static Footing all_rules(const Shape& shape);
};

// `position` says which cells are open. Errors kBadArgument, kBadName, with the place in the text.
Result<Claim> parse_claim(const Position& position, const Vocabulary& vocabulary, std::string_view text);
Result<CellGroup> parse_group(const Position& position, const Vocabulary& vocabulary, std::string_view text);
// "c1,c2 : r3,2*r7".
Result<std::vector<Weight>> parse_balance(const Shape& shape, std::string_view text);
// "rules", "position", "r1,r2,ring", "ring and earlier"; `claims`: how many claims there were before.
Result<Footing> parse_footing(const Shape& shape, const Vocabulary& vocabulary, std::string_view text, int claims);

}  // namespace cp
