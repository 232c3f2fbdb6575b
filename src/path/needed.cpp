// SPDX-License-Identifier: Apache-2.0
#include "path/needed.h"

#include <algorithm>

#include "path/some_steps.h"
#include "speak/step_text.h"

namespace cp {

namespace {

constexpr std::size_t kMostStepsATurn = 500;
constexpr std::size_t kBalancesATurn = 20;

// Everything that fires, in rounds: each technique in turn reports all its steps, and all are taken.
class Rounds {
 public:
  Rounds(const Position& start, const Selection& selection, int most_free_slack) : path_(start), selection_(selection), most_free_slack_(most_free_slack) {}

  Path run() {
    bool goes_on = true;
    while (goes_on && !position().is_complete() && !position().has_clash()) {
      goes_on = false;
      for (const Technique* technique : selection_.techniques) goes_on = take_all(*technique) || goes_on;
      if (!goes_on && selection_.balances) goes_on = take_balances();
    }
    path_.end = position().has_clash() ? PathEnd::kImpossible : position().is_complete() ? PathEnd::kSolved : PathEnd::kStuck;
    return std::move(path_);
  }

 private:
  [[nodiscard]] Position& position() { return path_.end_position; }

  bool take_all(const Technique& technique) {
    if (position().is_complete() || position().has_clash()) return false;
    SomeSteps some(kMostStepsATurn);
    technique.find(position(), some);
    const Position before = position();
    for (Step& step : some.steps) take(before, std::move(step), &technique);
    return !some.steps.empty();
  }
  bool take_balances() {
    if (!can_find(position().shape())) return false;
    FinderOptions options;
    options.most_free_slack = most_free_slack_;
    options.limit = kBalancesATurn;
    const Position before = position();
    const FinderResult found = find_balances(before, options);
    for (const FoundBalance& balance : found.balances) take(before, to_step(balance), nullptr);
    return !found.balances.empty();
  }
  // Found at `before`; another step may have done a part of it in the meantime.
  void take(const Position& before, Step step, const Technique* technique) {
    for (const Candidate& placed : step.placements) {
      if (position().is_placed(placed.cell) || !position().has(placed)) return;
    }
    const Position now = position();
    apply(step, position());
    if (position() == now) return;
    PathStep at{before, std::move(step), {}, 0, {}};
    at.measure = measure(at.step, before, technique);
    at.text = step_text(at.step, before);
    path_.steps.push_back(std::move(at));
  }

  Path path_;
  const Selection& selection_;
  int most_free_slack_;
};

bool uses(const Path& path, const Selection& left) {
  return std::any_of(path.steps.begin(), path.steps.end(), [&](const PathStep& step) { return !left.has(step.step.technique); });
}

}  // namespace

Result<Needed> is_needed(const Position& puzzle, const NeededOptions& options) {
  PathOptions all;
  all.without = options.without;
  all.most_free_slack = options.most_free_slack;
  auto with = find_path(puzzle, all);
  if (!with) return with.error();
  PathOptions rest = all;
  rest.without.insert(rest.without.end(), options.techniques.begin(), options.techniques.end());
  const auto selection = select_techniques({}, rest.without);
  if (!selection) return selection.error();
  auto without = find_path(puzzle, rest);
  if (!without) return without.error();
  Needed needed{Needed::Answer::kOpen, std::move(with).value(), std::move(without).value(), 1, false};
  needed.is_used = uses(needed.with, *selection);
  if (needed.without.end == PathEnd::kStuck) {
    ++needed.orders;
    Path rounds = Rounds(puzzle, *selection, options.most_free_slack).run();
    const bool gets_further = rounds.end != PathEnd::kStuck || rounds.end_position.candidate_count() < needed.without.end_position.candidate_count();
    if (gets_further) needed.without = std::move(rounds);
  }
  if (needed.without.end == PathEnd::kSolved) needed.answer = Needed::Answer::kNo;
  else if (needed.with.end == PathEnd::kSolved) needed.answer = Needed::Answer::kYes;
  return needed;
}

}  // namespace cp
