// SPDX-License-Identifier: Apache-2.0
#include "compose/way_in.h"

#include <algorithm>

#include "balance/finder.h"
#include "compose/ground.h"
#include "path/path.h"
#include "path/some_steps.h"

namespace cp {

namespace {

// The slack left when all forced shares are known; working a balance through costs far more than this.
bool is_tight_enough(const Position& position, const Weighing& weighing, int most_free_slack) {
  if (weighing.slack < 0 || weighing.slack > kMostRawSlack) return false;
  return weighing.slack - forced_shares(position, weighing).total <= most_free_slack;
}

constexpr std::size_t kMostStepsOfTheIdea = 50;
constexpr std::size_t kMostFound = 20;  // balances of a position that are looked at when the houses are not named

}  // namespace

WayIn Examiner::follow(const Position& puzzle, const std::vector<Weight>& weights) const {
  WayIn way(puzzle);
  if (!before_.run(way.stuck, plan_.idea.slack) || way.stuck.is_complete()) return way;
  way.stage = Stage::kStuck;
  way.other = without_.first_that_speaks(way.stuck);
  if (way.other != nullptr) return way;
  way.stage = Stage::kNoOther;
  if (!plan_.idea.is_balance()) try_technique(way);
  else if (!weights.empty()) try_balance(way, weights);
  else if (plan_.idea.kind == PlannedIdea::Kind::kOfAKind) try_kind(way);
  else try_found(way);
  return way;
}

bool Examiner::try_step(WayIn& way, Step step, const std::vector<Weight>& weights, int free_slack) const {
  Position end = way.stuck;
  apply(step, end);
  const bool is_met = after_.run(end, plan_.idea.slack) && end.is_complete();
  if (!is_met && way.stage == Stage::kMoved) return false;  // an earlier step of the idea is as good
  way.stage = is_met ? Stage::kMet : Stage::kMoved;
  way.step = std::move(step);
  way.weights = weights;
  way.free_slack = free_slack;
  way.end = std::move(end);
  return is_met;
}

void Examiner::try_balance(WayIn& way, const std::vector<Weight>& weights) const {
  const Weighing weighing = weigh(way.stuck, weights);
  if (!is_tight_enough(way.stuck, weighing, plan_.idea.slack)) return;
  Inference inference = infer(way.stuck, weighing, plan_.idea.level);
  for (LevelResult& level : inference.levels) {
    Step step;
    step.technique = kBalanceId;
    step.eliminations = std::move(level.eliminations);
    step.reason = std::move(level.reason);
    if (try_step(way, std::move(step), weighing.weights, inference.free_slack)) return;
  }
}

void Examiner::try_kind(WayIn& way) const {
  struct Speaker {
    int key = 0;
    std::vector<Weight> weights;
  };
  std::vector<Speaker> speakers;
  for (const std::vector<Weight>& weights : all_houses(plan_.idea)) {
    const Weighing weighing = weigh(way.stuck, weights);
    if (!is_tight_enough(way.stuck, weighing, plan_.idea.slack)) continue;
    const Inference inference = infer(way.stuck, weighing, std::min(plan_.idea.level, 4), true);
    if (inference.levels.empty()) continue;
    speakers.push_back({rank_key(load_of(weighing, inference.levels.front().reason), pointing_of(way.stuck, weighing)), weights});
  }
  std::stable_sort(speakers.begin(), speakers.end(), [](const Speaker& a, const Speaker& b) { return a.key < b.key; });
  for (const Speaker& speaker : speakers) {
    try_balance(way, speaker.weights);
    if (way.stage == Stage::kMet) return;
  }
}

void Examiner::try_found(WayIn& way) const {
  FinderOptions options;
  options.most_free_slack = plan_.idea.slack;
  options.highest_level = std::min(plan_.idea.level, 4);
  options.limit = kMostFound;
  const FinderResult result = find_balances(way.stuck, options);
  for (const FoundBalance& found : result.balances) {
    if (try_step(way, to_step(found), found.weighing.weights, found.free_slack)) return;
  }
}

void Examiner::try_technique(WayIn& way) const {
  const auto technique = find_technique(plan_.idea.technique);
  if (!technique) return;
  SomeSteps some(kMostStepsOfTheIdea);
  (*technique)->find(way.stuck, some);
  for (Step& step : some.steps) {
    if (try_step(way, std::move(step), {}, 0)) return;
  }
}

}  // namespace cp
