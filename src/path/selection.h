// SPDX-License-Identifier: Apache-2.0
// Which techniques may be used? Chosen by name: an id of the catalogue, a family (all its techniques at once),
// "uniqueness" (all that need exactly one solution, whatever their family), or "balance".
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "deduce/technique.h"

namespace cp {

// The id under which balances are switched on and off and named in steps.
inline constexpr std::string_view kBalanceId = "balance";
// The name of the group of all techniques that need a puzzle with exactly one solution.
inline constexpr std::string_view kUniquenessGroup = "uniqueness";

struct Selection {
  std::vector<const Technique*> techniques;  // cheapest first, ties by id
  bool balances = true;

  [[nodiscard]] bool has(std::string_view id) const;
};

// All techniques and balances.
Selection whole_catalogue();

// `only` empty: everything; then without what `without` names. Error kBadName with a hint for an unknown name.
Result<Selection> select_techniques(const std::vector<std::string>& only, const std::vector<std::string>& without);

// Does the name mean this technique: its id, its family, or the uniqueness group?
bool means(std::string_view name, const Technique& technique);

// Every name that may be used: ids, families, groups; sorted, none twice.
std::vector<std::string> technique_names();

}  // namespace cp
