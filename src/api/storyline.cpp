// SPDX-License-Identifier: Apache-2.0
#include "api/storyline.h"

#include <array>

#include "base/text.h"
#include "deduce/basics.h"

namespace cp::api {

namespace {

std::optional<std::size_t> first_balance(const Path& path) {
  for (std::size_t i = 0; i < path.steps.size(); ++i) {
    if (path.steps[i].step.technique == kBalanceId) return i;
  }
  return std::nullopt;
}

PathStep as_path_step(const Position& position, const FoundBalance& found) {
  PathStep step{position, to_step(found), {}, 0, {}};
  step.measure = measure(step.step, position, nullptr);
  return step;
}


// The way of a lesson: the basics, and balances where they end. Other techniques could bypass the idea of the lesson.
PathOptions lesson_options(int most_free_slack) {
  PathOptions options;
  options.most_free_slack = most_free_slack;
  options.only = basic_families();
  options.only.emplace_back(kBalanceId);
  return options;
}

// The best balance of the position with houses in both pans; one house against nothing makes no lesson.
std::optional<PathStep> best_two_sided_balance(const Position& position, int most_free_slack) {
  if (!can_find(position.shape())) return std::nullopt;
  FinderOptions options;
  options.most_free_slack = most_free_slack;
  for (const FoundBalance& found : find_balances(position, options).balances) {
    bool has_left = false;
    bool has_right = false;
    for (const Weight& weight : found.weighing.weights) (weight.weight > 0 ? has_left : has_right) = true;
    if (has_left && has_right) return as_path_step(position, found);
  }
  return std::nullopt;
}

// What the weakest level that says something makes of these houses here.
std::optional<PathStep> chosen_balance(const Position& position, const std::vector<Weight>& weights) {
  FoundBalance found;
  found.weighing = weigh(position, weights);
  const Inference inference = infer(position, found.weighing, kHighestLevel, true);
  if (inference.is_impossible || inference.levels.empty()) return std::nullopt;
  found.free_slack = inference.free_slack;
  found.result = inference.levels.front();
  found.load = load_of(found.weighing, found.result.reason);
  return as_path_step(position, found);
}

// The first steps of the path, then the balance, then the easiest way on.
Result<Storyline> turn_off(const Path& plain, std::size_t at, PathStep balance, const PathOptions& options) {
  Position position = balance.before;
  apply(balance.step, position);
  auto rest = find_path(position, options);
  if (!rest) return rest.error();
  std::vector<PathStep> steps(plain.steps.begin(), plain.steps.begin() + static_cast<std::ptrdiff_t>(at));
  steps.push_back(std::move(balance));
  for (PathStep& step : rest.value().steps) steps.push_back(std::move(step));
  Storyline storyline{std::move(rest.value()), at, false};
  storyline.path.steps = std::move(steps);
  return storyline;
}

// Where plain steps of some kinds come to an end: a lesson that begins there says "after the singles" and not "after step 13".
constexpr std::array<std::string_view, 3> kStages = {"single", "locked", "subset"};

// The first of these ends at which `find` has a balance, and the path from there.
template <typename Find>
Result<std::optional<Storyline>> turn_off_at_stage(const Position& puzzle, const PathOptions& options, const Find& find) {
  PathOptions stage;
  for (const std::string_view kind : kStages) {
    stage.only.emplace_back(kind);
    const auto path = find_path(puzzle, stage);
    if (!path) return path.error();
    auto balance = path->end_position.is_complete() ? std::nullopt : find(path->end_position);
    if (!balance) continue;
    auto storyline = turn_off(*path, path->steps.size(), std::move(*balance), options);
    if (!storyline) return storyline.error();
    return std::optional<Storyline>(std::move(storyline).value());
  }
  return std::optional<Storyline>();
}

Error no_balance(const Position& puzzle, int most_free_slack) {
  if (!can_find(puzzle.shape())) {
    return Error{ErrorCode::kLimit, "balances are searched on grids up to 9x9; this one is " + std::string(puzzle.shape().name()),
                 "name the houses of the balance (--left and --right)", {}};
  }
  return Error{ErrorCode::kLimit, "no balance with a free slack of " + to_text(most_free_slack) + " or less says anything along the path of this puzzle",
               most_free_slack < kMostFreeSlack ? "try --max-slack 2 (\"max_slack\": 2)" : "choose another puzzle", {}};
}

}  // namespace

Result<Storyline> storyline_of(const Position& puzzle, int most_free_slack) {
  const PathOptions options = lesson_options(most_free_slack);
  auto path = find_path(puzzle, options);
  if (!path) return path.error();
  if (const auto key = first_balance(*path)) return Storyline{std::move(*path), *key, true};
  auto staged = turn_off_at_stage(puzzle, options, [most_free_slack](const Position& position) { return best_two_sided_balance(position, most_free_slack); });
  if (!staged) return staged.error();
  if (staged.value().has_value()) return std::move(*staged.value());
  for (std::size_t i = 0; i < path->steps.size(); ++i) {
    if (auto balance = best_two_sided_balance(path->steps[i].before, most_free_slack)) return turn_off(*path, i, std::move(*balance), options);
  }
  return no_balance(puzzle, most_free_slack);
}

Result<Storyline> storyline_on(const Position& puzzle, const std::vector<Weight>& weights, int most_free_slack) {
  const PathOptions options = lesson_options(most_free_slack);
  const auto path = find_path(puzzle, options);
  if (!path) return path.error();
  const auto needed = first_balance(*path);
  if (needed) {
    if (auto balance = chosen_balance(path->steps[*needed].before, weights)) {
      auto storyline = turn_off(*path, *needed, std::move(*balance), options);
      if (storyline) storyline.value().is_needed = true;
      return storyline;
    }
  }
  auto staged = turn_off_at_stage(puzzle, options, [&weights](const Position& position) { return chosen_balance(position, weights); });
  if (!staged) return staged.error();
  if (staged.value().has_value()) return std::move(*staged.value());
  for (std::size_t i = 0; i < path->steps.size(); ++i) {
    if (auto balance = chosen_balance(path->steps[i].before, weights)) return turn_off(*path, i, std::move(*balance), options);
  }
  return Error{ErrorCode::kLimit, "the balance chosen says nothing at any position along the path of this puzzle",
               "leave --left and --right out, or ask `weigh` for balances that say something", {}};
}

namespace {

// Plain families before that of the technique, and its plainer relatives.
std::vector<std::string> plainer_than(const Technique& technique) {
  std::vector<std::string> names;
  for (const std::string_view family : kBasicFamilies) {
    if (family != technique.family) {
      names.emplace_back(family);
      continue;
    }
    for (const Technique& other : catalogue()) {
      if (other.family == family && other.cost < technique.cost) names.emplace_back(other.id);
    }
    break;
  }
  return names;
}

// The easiest instance of the technique here, if there is one; of equally easy ones the one that says most.
std::optional<PathStep> easiest_instance(const Position& position, const Technique& technique) {
  StepList all;
  technique.find(position, all);
  std::optional<PathStep> best;
  for (Step& step : all.steps) {
    PathStep found{position, std::move(step), {}, 0, {}};
    found.measure = measure(found.step, position, &technique);
    const bool is_better = !best || found.measure.cost < best->measure.cost ||
                           (found.measure.cost == best->measure.cost && found.step.eliminations.size() > best->step.eliminations.size());
    if (is_better) best = std::move(found);
  }
  return best;
}

// Steps of the plain techniques to their end, appended.
Result<Position> go_plainly(const Position& start, const std::vector<std::string>& names, std::vector<PathStep>& steps) {
  if (names.empty()) return start;
  PathOptions options;
  options.only = names;
  auto path = find_path(start, options);
  if (!path) return path.error();
  for (PathStep& step : path.value().steps) steps.push_back(std::move(step));
  return path->end_position;
}

}  // namespace

Result<Storyline> storyline_with(const Position& puzzle, std::string_view technique_id, int most_free_slack) {
  const auto found = find_technique(technique_id);
  if (!found) return found.error();
  const Technique& technique = **found;
  const std::vector<std::string> plainer = plainer_than(technique);
  // Where the plain steps end before it fires, others may help, but neither balances nor what leans on uniqueness.
  const auto others = select_techniques({}, {std::string(technique.id), std::string(kUniquenessGroup), std::string(kBalanceId)});
  if (!others) return others.error();
  std::vector<PathStep> steps;
  Position position = puzzle;
  std::optional<PathStep> key;
  // First at the early ends: later plain steps often take away what it would have found.
  std::vector<std::string> early;
  bool is_early = false;
  for (const std::string_view stage : kStages) {
    if (key || stage == technique.family) break;
    early.emplace_back(stage);
    std::vector<PathStep> so_far;
    const auto after = go_plainly(puzzle, early, so_far);
    if (!after) return after.error();
    key = easiest_instance(*after, technique);
    if (key) {
      steps = std::move(so_far);
      position = *after;
      is_early = true;
    }
  }
  while (!key) {
    const auto after = go_plainly(position, plainer, steps);
    if (!after) return after.error();
    position = *after;
    key = easiest_instance(position, technique);
    if (key || position.is_complete()) break;
    auto next = easiest_step(position, *others, most_free_slack);
    if (!next) break;
    apply(next->step, position);
    steps.push_back(std::move(*next));
  }
  if (!key) {
    return Error{ErrorCode::kLimit, "'" + std::string(technique.name) + "' fires nowhere along the path of this puzzle", "choose another puzzle, or ask `survey` which techniques fire", {}};
  }
  PathOptions options;
  options.without = {std::string(kUniquenessGroup)};
  options.most_free_slack = most_free_slack;
  apply(key->step, position);
  auto rest = find_path(position, options);
  if (!rest) return rest.error();
  const std::size_t at = steps.size();
  steps.push_back(std::move(*key));
  for (PathStep& step : rest.value().steps) steps.push_back(std::move(step));
  Storyline storyline{std::move(rest.value()), at, !is_early};
  storyline.path.steps = std::move(steps);
  return storyline;
}

}  // namespace cp::api
