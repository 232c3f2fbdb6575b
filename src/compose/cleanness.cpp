// SPDX-License-Identifier: Apache-2.0
#include "compose/cleanness.h"

#include <algorithm>

#include "exact/minimal.h"
#include "path/path.h"

namespace cp {

namespace {

constexpr std::size_t kMostHousesInParts = 12;  // more have too many parts to try them all

int other_balances(const Plan& plan, const WayIn& way, const Weighing& own, int load) {
  FinderOptions options;
  options.most_free_slack = plan.idea.slack;
  options.limit = kMostOthers + 1;
  int others = 0;
  for (const FoundBalance& found : find_balances(way.stuck, options).balances) {
    const bool is_own = (found.weighing.open_left == own.open_left && found.weighing.open_right == own.open_right) ||
                        (found.weighing.open_left == own.open_right && found.weighing.open_right == own.open_left);
    if (!is_own && found.load.total() <= load) ++others;
  }
  return std::min(others, kMostOthers);
}

}  // namespace

int cost_of_idea(const Plan& plan, const WayIn& way) {
  if (way.stage < Stage::kMoved) return kLeastBalanceCost;
  if (const auto* reason = std::get_if<BalanceReason>(&way.step.reason)) return balance_cost(load_of(weigh(way.stuck, way.weights), *reason));
  return measure(way.step, way.stuck, technique_or_null(plan.idea.technique)).cost;
}

void for_each_way_round(const Plan& plan, const WayIn& way, int most, const std::function<bool(const Technique& technique, const Step& step)>& visit) {
  const Selection before = TechniqueSet(plan.before).selection();
  for (const Technique* technique : whole_catalogue().techniques) {
    const auto is_cheap = [&](int cost) { return technique == way.other || cost <= most; };
    if (!is_cheap(technique->cost) || technique->id == plan.idea.technique || before.has(technique->id)) continue;
    FirstStep first;
    technique->find(way.stuck, first);
    if (!first.found || !is_cheap(measure(first.first, way.stuck, technique).cost)) continue;
    if (!visit(*technique, first.first)) return;
  }
}

bool falls_apart(const Position& position, const Weighing& whole) {
  const std::vector<Weight>& weights = whole.weights;
  if (weights.size() > kMostHousesInParts) return false;
  // The first house lies in the first part.
  for (std::uint32_t parts = 1; parts + 1 < (1U << weights.size()); parts += 2) {
    std::vector<Weight> one;
    std::vector<Weight> rest;
    for (std::size_t i = 0; i < weights.size(); ++i) (((parts >> i) & 1U) != 0 ? one : rest).push_back(weights[i]);
    const Weighing a = weigh(position, one);
    const Weighing b = weigh(position, rest);
    if (a.slack < 0 || b.slack < 0 || a.slack > kMostRawSlack || b.slack > kMostRawSlack) continue;
    const bool adds_up = !a.open_left.meets(b.open_left) && !a.open_right.meets(b.open_right) && (a.open_left | b.open_left) == whole.open_left &&
                         (a.open_right | b.open_right) == whole.open_right;
    if (adds_up && !(a.open_left | a.open_right).is_empty() && !(b.open_left | b.open_right).is_empty()) return true;
  }
  return false;
}

Cleanness cleanness_of(const Plan& plan, const Position& puzzle, const WayIn& way) {
  Cleanness clean;
  const auto* reason = std::get_if<BalanceReason>(&way.step.reason);
  int cost = 0;
  if (reason != nullptr) {
    const Weighing weighing = weigh(way.stuck, way.weights);
    const Load load = load_of(weighing, *reason);
    clean.load = load.total();
    clean.hint = pointing_of(way.stuck, weighing).hint;
    clean.is_irreducible = !falls_apart(way.stuck, weighing);
    cost = balance_cost(load);
    clean.other_balances = other_balances(plan, way, weighing, clean.load);
  } else {
    cost = cost_of_idea(plan, way);
    clean.load = cost;
  }
  for_each_way_round(plan, way, cost, [&](const Technique&, const Step&) {
    ++clean.other_techniques;
    return true;
  });
  Position start = way.stuck;
  apply(way.step, start);
  PathOptions options;
  options.only = plan.after;
  options.tells = false;
  if (!plan.after.empty()) {
    const auto tail = find_path(start, options);
    if (tail) {
      const PathMeasure all = measure(*tail);
      clean.tail_steps = all.beyond_singles;
      clean.tail_hardest = all.hardest;
    }
  }
  clean.superfluous = redundant_givens(puzzle).size();
  return clean;
}

}  // namespace cp
