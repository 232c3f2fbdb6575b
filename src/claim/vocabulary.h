// SPDX-License-Identifier: Apache-2.0
// The names that a script has given so far: groups of cells, and balances.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "claim/claim.h"
#include "grid/position.h"

namespace cp {

struct NamedBalance {
  std::string name;
  std::vector<Weight> weights;  // ordered by house, none 0
};

// The remainder of a pan: cells of positive (or negative) weight, as often as they weigh.
CellGroup remainder_of(const Shape& shape, const std::vector<Weight>& weights, bool left);

struct Vocabulary {
  std::map<std::string, CellGroup> groups;
  std::vector<NamedBalance> balances;  // in the order of their naming

  [[nodiscard]] const NamedBalance* balance(std::string_view name) const;
  [[nodiscard]] bool has(const std::string& name) const { return groups.contains(name) || balance(name) != nullptr; }
};

// Can a group or a balance be called that? Not when it reads like a cell, a house, a digit, or a word of the language.
bool is_free_name(const Shape& shape, const std::string& name);

}  // namespace cp
