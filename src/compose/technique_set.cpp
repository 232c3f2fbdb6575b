// SPDX-License-Identifier: Apache-2.0
#include "compose/technique_set.h"

#include <algorithm>

#include "path/path.h"

namespace cp {

namespace {

// Is every technique of the family in the selection?
bool has_family(const Selection& selection, std::string_view family) {
  return std::all_of(catalogue().begin(), catalogue().end(), [&](const Technique& technique) { return technique.family != family || selection.has(technique.id); });
}

}  // namespace

TechniqueSet::TechniqueSet(const std::vector<std::string>& names) {
  if (names.empty()) {
    selection_.balances = false;
    return;
  }
  selection_ = select_techniques(names, {}).value();
  is_quick_ = has_family(selection_, "single");
  groups_ = {is_quick_, is_quick_ && has_family(selection_, "locked"), is_quick_ && has_family(selection_, "subset"), is_quick_ && has_family(selection_, "fish")};
  for (const Technique* technique : selection_.techniques) {
    const bool is_known = is_quick_ && (technique->family == "single" || (groups_.locked && technique->family == "locked") || (groups_.subsets && technique->family == "subset") ||
                                        (groups_.fish && technique->family == "fish"));
    if (!is_known) others_.push_back(technique);
  }
}

bool TechniqueSet::run(Position& position, int most_free_slack) const {
  bool changed = true;
  while (changed) {
    changed = false;
    if (is_quick_ && !run_basics(position, groups_)) return false;
    if (position.is_complete()) return true;
    if (!run_others(position, most_free_slack, changed)) return false;
  }
  return true;
}

bool TechniqueSet::run_others(Position& position, int most_free_slack, bool& changed) const {
  for (const Technique* technique : others_) {
    FirstStep first;
    technique->find(position, first);
    if (!first.found) continue;
    apply(first.first, position);
    changed = true;
    return !position.has_clash();
  }
  if (!selection_.balances) return true;
  if (const auto balance = balance_step(position, most_free_slack)) {
    apply(balance->step, position);
    changed = true;
  }
  return !position.has_clash();
}

const Technique* TechniqueSet::first_that_speaks(const Position& position) const {
  for (const Technique* technique : selection_.techniques) {
    FirstStep first;
    technique->find(position, first);
    if (first.found) return technique;
  }
  return nullptr;
}

}  // namespace cp
