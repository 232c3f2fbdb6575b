// SPDX-License-Identifier: Apache-2.0
// Chains by their definition, with sets of candidates and no cleverness; shared by the twins of chains.
#pragma once

#include <map>

#include "oracle/definitions/plain_sight.h"

namespace cp::oracle {

// Candidates of one digit of which one is true, or none.
using Places = std::set<Candidate>;
// Ordered both ways: if the first holds nothing, the second holds something.
using StrongLinks = std::set<std::pair<Places, Places>>;

StrongLinks links_of_cells(const Position& position);
StrongLinks links_of_houses(const Position& position);
StrongLinks links_of_overlaps(const Position& position);

// For each start the ends that become true by a chain of links, with the fewest links it takes.
std::map<std::pair<Places, Places>, int> joined_ends(const Position& position, const StrongLinks& links);

// What sees all of both.
std::set<Candidate> excluded_by_both(const Position& position, const Places& one, const Places& other);

// Does each of the one exclude each of the other?
bool exclude_places(const Position& position, const Places& one, const Places& other);

}  // namespace cp::oracle
