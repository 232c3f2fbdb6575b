// SPDX-License-Identifier: Apache-2.0
#include "path/selection.h"

#include <algorithm>
#include <set>

namespace cp {

namespace {

// Null when the name means something.
std::optional<Error> unknown(const std::string& name) {
  if (name == kBalanceId || name == kUniquenessGroup) return std::nullopt;
  const bool is_known = std::any_of(catalogue().begin(), catalogue().end(), [&](const Technique& technique) { return means(name, technique); });
  if (is_known) return std::nullopt;
  return find_technique(name).error();
}

}  // namespace

bool Selection::has(std::string_view id) const {
  if (id == kBalanceId) return balances;
  return std::any_of(techniques.begin(), techniques.end(), [&](const Technique* technique) { return technique->id == id; });
}

bool means(std::string_view name, const Technique& technique) {
  return name == technique.id || name == technique.family || (name == kUniquenessGroup && technique.needs_unique);
}

Selection whole_catalogue() {
  Selection all;
  for (const Technique& technique : catalogue()) all.techniques.push_back(&technique);
  std::stable_sort(all.techniques.begin(), all.techniques.end(), [](const Technique* a, const Technique* b) { return a->cost < b->cost; });
  return all;
}

Result<Selection> select_techniques(const std::vector<std::string>& only, const std::vector<std::string>& without) {
  for (const auto* names : {&only, &without}) {
    for (const std::string& name : *names) {
      if (auto error = unknown(name)) return *error;
    }
  }
  const auto named_in = [](const std::vector<std::string>& names, const Technique& technique) {
    return std::any_of(names.begin(), names.end(), [&](const std::string& name) { return means(name, technique); });
  };
  const auto has_balance = [](const std::vector<std::string>& names) { return std::find(names.begin(), names.end(), kBalanceId) != names.end(); };
  Selection selection = whole_catalogue();
  std::erase_if(selection.techniques, [&](const Technique* technique) {
    return (!only.empty() && !named_in(only, *technique)) || named_in(without, *technique);
  });
  selection.balances = (only.empty() || has_balance(only)) && !has_balance(without);
  return selection;
}

std::vector<std::string> technique_names() {
  std::set<std::string> names = {std::string(kBalanceId), std::string(kUniquenessGroup)};
  for (const Technique& technique : catalogue()) {
    names.emplace(technique.id);
    names.emplace(technique.family);
  }
  return {names.begin(), names.end()};
}

}  // namespace cp
