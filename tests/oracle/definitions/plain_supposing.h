// SPDX-License-Identifier: Apache-2.0
// Supposing and following, by the definition; shared by the twins of the forcing kinds.
#pragma once

#include "oracle/definitions/plain_sight.h"

namespace cp::oracle {

// What a position comes to.
struct Followed {
  bool is_impossible = false;
  std::set<Candidate> gone;  // candidates of the position that fell
};

// Singles, again and again; and if wanted locked candidates, naked and hidden pairs.
Followed followed(const Position& position, bool with_small_sets);
// The same with the candidate placed first.
Followed followed_from(const Position& position, Candidate supposed, bool with_small_sets);

// Candidates of each cell; places of each digit in each house.
std::set<std::set<Candidate>> cells_to_split(const Position& position);
std::set<std::set<Candidate>> houses_to_split(const Position& position);

// What falls in all cases of some fact but not with nothing supposed, each candidate by itself. An impossible case counts as
// one in which everything falls, or spoils the fact.
Conclusions forced_by_all(const Position& position, const std::set<std::set<Candidate>>& facts, bool with_small_sets, bool counts_impossible);

}  // namespace cp::oracle
