// SPDX-License-Identifier: Apache-2.0
#include "path/path.h"

#include <algorithm>
#include <set>

#include "path/some_steps.h"
#include "speak/step_text.h"

namespace cp {

namespace {

// Different conclusions that techniques offer here at this cost or less.
int open_steps(const Position& position, const Selection& selection, int cost) {
  std::set<std::pair<std::vector<Candidate>, std::vector<Candidate>>> conclusions;
  for (const Technique* technique : selection.techniques) {
    if (technique->cost > cost || static_cast<int>(conclusions.size()) >= kMostOpen) break;
    SomeSteps some(kMostOpen);
    technique->find(position, some);
    for (const Step& step : some.steps) {
      if (measure(step, position, technique).cost <= cost) conclusions.insert({step.placements, step.eliminations});
    }
  }
  return std::clamp(static_cast<int>(conclusions.size()), 1, kMostOpen);
}

bool is_single(const Step& step) { return std::holds_alternative<LoneReason>(step.reason); }

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
  PathStep found{position, to_step(result.balances.front()), {}, 0, {}};
  found.measure = measure(found.step, position, nullptr);
  return found;
}

std::optional<PathStep> easiest_step(const Position& position, const Selection& selection, int most_free_slack) {
  std::optional<PathStep> best;
  bool has_weighed = !selection.balances;
  const auto consider = [&](std::optional<PathStep> step) {
    if (step && (!best || step->measure.cost < best->measure.cost)) best = std::move(step);
  };
  const auto weigh_once = [&] {
    if (!has_weighed && (!best || best->measure.cost > kLeastBalanceCost)) consider(balance_step(position, most_free_slack));
    has_weighed = true;
  };
  for (const Technique* technique : selection.techniques) {
    if (best && technique->cost >= best->measure.cost) break;
    if (technique->cost > kLeastBalanceCost) weigh_once();
    if (best && technique->cost >= best->measure.cost) break;
    FirstStep first;
    technique->find(position, first);
    if (!first.found) continue;
    PathStep step{position, std::move(first.first), {}, 0, {}};
    step.measure = measure(step.step, position, technique);
    consider(std::move(step));
  }
  weigh_once();
  return best;
}

Result<Path> find_path(const Position& start, const PathOptions& options) {
  const auto selection = select_techniques(options.only, options.without);
  if (!selection) return selection.error();
  Path path(start);
  Position& position = path.end_position;
  while (!position.is_complete() && static_cast<int>(path.steps.size()) < options.most_steps) {
    if (position.has_clash()) break;
    std::optional<PathStep> next = easiest_step(position, *selection, options.most_free_slack);
    if (!next) break;
    if (options.tells) {
      next->open = open_steps(position, *selection, next->measure.cost);
      next->text = step_text(next->step, position);
    }
    apply(next->step, position);
    path.steps.push_back(std::move(*next));
  }
  if (position.has_clash()) path.end = PathEnd::kImpossible;
  else path.end = position.is_complete() ? PathEnd::kSolved : PathEnd::kStuck;
  return path;
}

PathMeasure measure(const Path& path) {
  PathMeasure all;
  int open = 0;
  for (const PathStep& step : path.steps) {
    ++all.steps;
    all.effort += step.measure.cost;
    open += step.open;
    if (step.measure.cost > all.hardest) {
      all.hardest = step.measure.cost;
      all.technique = step.step.technique;
    }
    if (is_single(step.step)) continue;
    ++all.beyond_singles;
    all.narrow += step.open == 1 ? 1 : 0;
  }
  if (all.steps > 0) all.open_tenths = (10 * open + all.steps / 2) / all.steps;
  return all;
}

}  // namespace cp
