// SPDX-License-Identifier: Apache-2.0
// Positions to audit techniques on: fresh puzzles, every position along solving paths in random order, positions from
// which random false candidates were struck, with one or many solutions. All follow from a seed.
#pragma once

#include <algorithm>
#include <string_view>
#include <vector>

#include "base/rng.h"
#include "deduce/technique.h"
#include "exact/backbone.h"
#include "exact/minimal.h"
#include "exact/random_grid.h"
#include "exact/solve.h"

namespace cp::audit {

inline constexpr std::uint64_t kMostSolutions = 10'000;

enum class Origin { kFresh, kPath, kStruck };

struct AuditState {
  Position position;
  Origin origin;
};

// All steps of one technique.
inline std::vector<Step> steps_of(const Technique& technique, const Position& position) {
  StepList list;
  technique.find(position, list);
  return std::move(list.steps);
}

// The first steps of one technique, at most so many.
inline std::vector<Step> some_steps_of(const Technique& technique, const Position& position, std::size_t most) {
  struct Some final : StepSink {
    explicit Some(std::size_t limit) : most(limit) {}
    bool take(Step step) override {
      steps.push_back(std::move(step));
      return steps.size() < most;
    }
    std::size_t most;
    std::vector<Step> steps;
  } some(most);
  technique.find(position, some);
  return std::move(some.steps);
}

// Do the givens alone have exactly one solution? Techniques that need that are judged only where it holds.
inline bool has_proper_givens(const Position& position) {
  Position puzzle(position.shape());
  for (const Cell cell : position.givens()) puzzle.place_given(cell, *position.digit_at(cell));
  return how_many(puzzle) == HowMany::kOne;
}

// The cells of a set in random order.
inline std::vector<Cell> shuffled(const CellSet& cells, Rng& rng) {
  std::vector<Cell> order;
  for (const Cell cell : cells) order.push_back(cell);
  rng.shuffle(order);
  return order;
}

// Candidates of open cells that no solution has.
inline std::vector<Candidate> false_candidates(const Position& position, const Backbone& backbone) {
  std::vector<Candidate> found;
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell) & backbone.never[cell.index]) found.push_back({cell, digit});
  }
  return found;
}

// One step by the first technique that fires, techniques in random order, a random one of its steps.
inline bool take_random_step(Position& position, Rng& rng) {
  std::vector<const Technique*> order;  // the first dozen steps of a technique are enough to choose from
  for (const Technique& technique : catalogue()) order.push_back(&technique);
  rng.shuffle(order);
  for (const Technique* technique : order) {
    const std::vector<Step> steps = some_steps_of(*technique, position, 12);
    if (steps.empty()) continue;
    apply(steps[rng.below(static_cast<std::uint32_t>(steps.size()))], position);
    return true;
  }
  return false;
}

// Visits the positions of one random path from a proper puzzle to its end. Where nothing fires, a random candidate that
// the solution does not have is struck out, and the path goes on.
template <typename Visit>
void walk_path(Position position, const FullGrid& solution, Rng& rng, Visit visit) {
  while (!position.is_complete()) {
    if (!visit(AuditState{position, Origin::kPath})) return;
    if (take_random_step(position, rng)) {
      if (!solution.fits(position)) return;  // a wrong step, which the visitor has seen already
      continue;
    }
    std::vector<Candidate> wrong;
    for (const Cell cell : position.open()) {
      for (const Digit digit : position.candidates(cell) - DigitSet::of(solution.at(cell))) wrong.push_back({cell, digit});
    }
    if (wrong.empty()) return;
    position.eliminate(wrong[rng.below(static_cast<std::uint32_t>(wrong.size()))]);
  }
}

// The puzzle with up to three givens fewer, then with a random share of its false candidates struck out. Has 1 to
// 10 000 solutions, or is not visited.
template <typename Visit>
bool visit_struck(const Position& puzzle, Rng& rng, Visit visit) {
  const std::vector<Cell> givens = shuffled(puzzle.givens(), rng);
  CellSet kept = puzzle.givens();
  const std::size_t fewer = std::min<std::size_t>(rng.below(4), givens.size());
  for (std::size_t i = 0; i < fewer; ++i) kept.remove(givens[i]);
  Position position = from_givens(puzzle, kept);
  const SolutionCount count = count_solutions(position, kMostSolutions + 1);
  if (count.count > kMostSolutions) return true;
  const std::uint32_t share = rng.below(101);
  for (const Candidate& candidate : false_candidates(position, find_backbone(position))) {
    if (rng.below(100) < share) position.eliminate(candidate);
  }
  return visit(AuditState{position, Origin::kStruck});
}

// How many puzzles of a shape to take, and how many struck positions from each.
struct StatePlan {
  std::string_view shape;
  int puzzles = 0;
  int struck_per_puzzle = 0;
};

// A proper puzzle: minimal, except on 16x16, where a full grid loses a third of its givens and any it must keep stay.
inline Position make_puzzle(const FullGrid& solution, Rng& rng) {
  if (solution.shape().side() <= 9) return random_minimal_puzzle(solution, rng.next());
  const std::vector<Cell> cells = shuffled(solution.shape().all_cells(), rng);
  CellSet givens = solution.shape().all_cells();
  for (std::size_t i = 0; i < cells.size() * 2 / 5; ++i) {
    givens.remove(cells[i]);
    if (!is_proper(solution.with_givens(givens))) givens.add(cells[i]);
  }
  return solution.with_givens(givens);
}

// Visits all states of a plan. The visitor answers false to stop everything.
template <typename Visit>
bool visit_states(const StatePlan& plan, std::uint64_t seed, Visit visit) {
  const Shape& shape = *find_shape(plan.shape);
  Rng rng(seed);
  bool go_on = true;
  const auto guarded = [&](const AuditState& state) { return go_on = go_on && visit(state); };
  for (int i = 0; i < plan.puzzles && go_on; ++i) {
    const FullGrid solution = random_grid(shape, rng.next());
    const Position puzzle = make_puzzle(solution, rng);
    guarded({puzzle, Origin::kFresh});
    walk_path(puzzle, solution, rng, guarded);
    for (int k = 0; k < plan.struck_per_puzzle && go_on; ++k) visit_struck(puzzle, rng, guarded);
  }
  return go_on;
}

// Techniques beyond the basics, and their twins, are asked at every n-th state only, each at states of its own, so that an
// audit of all techniques takes minutes and not hours. The basics are asked everywhere.
inline bool is_basic(const Technique& technique) {
  return technique.family == "single" || technique.family == "locked" || technique.family == "subset" || technique.family == "fish";
}
inline bool is_its_turn(const Technique& technique, const Position& position, long long state, int every) {
  const auto number = &technique - catalogue().data();
  if (position.shape().side() > 9) every *= 8;  // the techniques take long on large grids
  return (is_basic(technique) && position.shape().side() <= 9) || (state + number) % every == 0;
}

}  // namespace cp::audit
