// SPDX-License-Identifier: Apache-2.0
#include "path/alternatives.h"

#include <algorithm>

#include "speak/step_text.h"

namespace cp {

namespace {

// Passes on only what excludes the candidate.
class OnTarget final : public StepSink {
 public:
  OnTarget(const Shape& shape, Candidate target) : shape_(shape), target_(target) {}
  bool take(Step step) override {
    if (excludes(step)) steps.push_back(std::move(step));
    return true;
  }
  std::vector<Step> steps;

 private:
  [[nodiscard]] bool excludes(const Step& step) const {
    if (std::find(step.eliminations.begin(), step.eliminations.end(), target_) != step.eliminations.end()) return true;
    return std::any_of(step.placements.begin(), step.placements.end(), [&](const Candidate& placed) {
      return placed.cell == target_.cell ? placed.digit != target_.digit : placed.digit == target_.digit && shape_.peers(placed.cell).has(target_.cell);
    });
  }
  const Shape& shape_;
  Candidate target_;
};

void add_balances(const Position& position, Candidate target, const AlternativesOptions& options, std::vector<PathStep>& all) {
  if (!can_find(position.shape())) return;
  FinderOptions finder;
  finder.most_free_slack = options.most_free_slack;
  finder.limit = options.limit;
  finder.target = target;
  for (const FoundBalance& found : find_balances(position, finder).balances) {
    PathStep step{position, to_step(found), {}, 0, {}};
    step.measure = measure(step.step, position, nullptr);
    all.push_back(std::move(step));
  }
}

}  // namespace

Alternatives alternatives(const Position& position, Candidate target, const Selection& selection, const AlternativesOptions& options) {
  std::vector<PathStep> all;
  for (const Technique* technique : selection.techniques) {
    OnTarget on_target(position.shape(), target);
    technique->find(position, on_target);
    for (Step& step : on_target.steps) {
      PathStep at{position, std::move(step), {}, 0, {}};
      at.measure = measure(at.step, position, technique);
      all.push_back(std::move(at));
    }
  }
  if (selection.balances) add_balances(position, target, options, all);
  std::stable_sort(all.begin(), all.end(), [](const PathStep& a, const PathStep& b) {
    return a.measure.cost != b.measure.cost ? a.measure.cost < b.measure.cost : a.measure.facts < b.measure.facts;
  });
  Alternatives result;
  result.found = all.size();
  if (options.limit > 0 && all.size() > options.limit) all.erase(all.begin() + static_cast<std::ptrdiff_t>(options.limit), all.end());
  for (PathStep& step : all) step.text = step_text(step.step, position);
  result.steps = std::move(all);
  return result;
}

}  // namespace cp
