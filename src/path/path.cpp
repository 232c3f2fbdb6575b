// SPDX-License-Identifier: Apache-2.0
#include "path/path.h"

#include <algorithm>

#include "speak/step_text.h"

namespace cp {

namespace {

// The techniques that may be used, cheapest first.
Result<std::vector<const Technique*>> allowed_techniques(const std::vector<std::string>& without) {
  std::vector<const Technique*> allowed;
  for (const Technique& technique : catalogue()) allowed.push_back(&technique);
  for (const std::string& id : without) {
    if (id == kBalanceId) continue;
    const auto found = find_technique(id);
    if (!found) return found.error();
    std::erase(allowed, *found);
  }
  std::stable_sort(allowed.begin(), allowed.end(), [](const Technique* a, const Technique* b) { return a->cost < b->cost; });
  return allowed;
}

std::optional<PathStep> easiest_step(const Position& position, const std::vector<const Technique*>& allowed) {
  for (const Technique* technique : allowed) {
    FirstStep first;
    technique->find(position, first);
    if (first.found) return PathStep{position, std::move(first.first), technique->cost, {}};
  }
  return std::nullopt;
}

}  // namespace

Step to_step(const FoundBalance& found) {
  Step step;
  step.technique = kBalanceId;
  step.eliminations = found.result.eliminations;
  step.reason = found.result.reason;
  return step;
}

std::optional<PathStep> balance_step(const Position& position, int most_free_slack) {
  if (!can_find(position.shape())) return std::nullopt;
  FinderOptions options;
  options.most_free_slack = most_free_slack;
  options.limit = 1;
  const FinderResult result = find_balances(position, options);
  if (result.balances.empty()) return std::nullopt;
  const FoundBalance& best = result.balances.front();
  PathStep found{position, to_step(best), balance_cost(best.load), {}};
  found.text = step_text(found.step, position);
  return found;
}

Result<Path> find_path(const Position& start, const PathOptions& options) {
  const auto allowed = allowed_techniques(options.without);
  if (!allowed) return allowed.error();
  const bool with_balances = std::find(options.without.begin(), options.without.end(), kBalanceId) == options.without.end();
  Path path(start);
  Position& position = path.end_position;
  while (!position.is_complete() && static_cast<int>(path.steps.size()) < options.most_steps) {
    if (position.has_clash()) break;
    std::optional<PathStep> next = easiest_step(position, *allowed);
    if (!next && with_balances) next = balance_step(position, options.most_free_slack);
    if (!next) break;
    next->text = step_text(next->step, position);
    apply(next->step, position);
    path.steps.push_back(std::move(*next));
  }
  if (position.has_clash()) path.end = PathEnd::kImpossible;
  else path.end = position.is_complete() ? PathEnd::kSolved : PathEnd::kStuck;
  return path;
}

}  // namespace cp
