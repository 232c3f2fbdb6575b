// SPDX-License-Identifier: Apache-2.0
#include "compose/attempt.h"

#include <algorithm>

#include "exact/minimal.h"
#include "exact/random_grid.h"
#include "exact/solve.h"

namespace cp {

namespace {

constexpr std::uint64_t kMostNodes = 5'000;  // of one search; the rare grid that takes more is not worth the wait
constexpr int kMostSurplusGivens = 8;  // givens above the wanted number that may stand before pruning

// A random grid with the fixed digits of the plan in it; empty when there is none.
std::optional<FullGrid> random_solution(const PlanGround& ground, Rng& rng) {
  const Shape& shape = plan_shape();
  if (ground.fixed.empty()) return random_grid(shape, rng.next());
  Position position(shape);
  for (const Candidate& each : ground.fixed) keep_only(position, each);
  std::vector<Cell> order;
  for (const Cell cell : shape.all_cells()) order.push_back(cell);
  rng.shuffle(order);
  auto grid = any_solution(position);
  if (!grid) return std::nullopt;
  // Each cell in turn gets a random digit that some grid has there.
  for (const Cell cell : order) {
    std::vector<Digit> digits;
    for (const Digit digit : position.candidates(cell)) digits.push_back(digit);
    rng.shuffle(digits);
    for (const Digit digit : digits) {
      Position trial = position;
      keep_only(trial, {cell, digit});
      if (!grid->has({cell, digit})) {
        auto other = any_solution(trial);
        if (!other) continue;
        grid = std::move(other);
      }
      position = trial;
      break;
    }
  }
  return grid;
}

// The givens of a puzzle in the making, and what the bounds let one do with them.
class Givens {
 public:
  Givens(const PlanGround& ground, std::vector<GivenBounds> bounds) : ground_(ground), bounds_(std::move(bounds)), cells_(ground.must) {}

  [[nodiscard]] const CellSet& cells() const { return cells_; }
  [[nodiscard]] int size() const { return cells_.size(); }
  [[nodiscard]] const std::vector<GivenBounds>& bounds() const { return bounds_; }
  [[nodiscard]] const CellSet& orbit(Cell cell) const { return ground_.orbit_of[cell.index]; }

  bool add(Cell cell) {
    if (cells_.has(cell) || !ground_.may.has(cell)) return false;
    const CellSet more = cells_ | orbit(cell);
    const bool fits = std::all_of(bounds_.begin(), bounds_.end(), [&](const GivenBounds& each) { return (each.cells & more).size() <= each.most; });
    if (fits) cells_ = more;
    return fits;
  }
  bool remove(Cell cell) {
    if (!cells_.has(cell) || ground_.must.has(cell)) return false;
    const CellSet fewer = cells_ - orbit(cell);
    const bool fits = std::all_of(bounds_.begin(), bounds_.end(), [&](const GivenBounds& each) { return (each.cells & fewer).size() >= each.least; });
    if (fits) cells_ = fewer;
    return fits;
  }
  void put_back(const CellSet& cells) { cells_ = cells; }

  // Random cells of each region until it has enough. False when that cannot be.
  bool meet_least(Rng& rng) {
    for (const GivenBounds& each : bounds_) {
      std::vector<Cell> cells;
      for (const Cell cell : each.cells & ground_.may) cells.push_back(cell);
      rng.shuffle(cells);
      for (const Cell cell : cells) {
        if ((each.cells & cells_).size() >= each.least) break;
        add(cell);
      }
      if ((each.cells & cells_).size() < each.least) return false;
    }
    return std::all_of(bounds_.begin(), bounds_.end(), [&](const GivenBounds& each) { return each.is_met(cells_); });
  }

 private:
  const PlanGround& ground_;
  std::vector<GivenBounds> bounds_;
  CellSet cells_;
};

Position to_search(const FullGrid& solution, const CellSet& givens) {
  Position position(solution.shape());
  for (const Cell cell : givens) keep_only(position, {cell, solution.at(cell)});
  return position;
}

// Adds givens where a second solution differs until there is none. False when that cannot be.
bool make_proper(Givens& givens, const FullGrid& solution, int most, Rng& rng) {
  while (givens.size() <= most) {
    const SolutionList found = solutions(to_search(solution, givens.cells()), 2, kMostNodes);
    if (found.end == SearchEnd::kComplete && found.grids.size() == 1) return true;
    if (found.grids.empty() || (found.grids.size() == 1 && found.grids[0] == solution)) return false;  // too many nodes
    const FullGrid& other = found.grids[0] == solution ? found.grids[1] : found.grids[0];
    std::vector<Cell> differ;
    for (const Cell cell : solution.shape().all_cells()) {
      if (solution.at(cell) != other.at(cell)) differ.push_back(cell);
    }
    rng.shuffle(differ);
    if (std::none_of(differ.begin(), differ.end(), [&](Cell cell) { return givens.add(cell); })) return false;
  }
  return false;
}

class Try {
 public:
  Try(const Examiner& examiner, const PlanGround& ground, Rng& rng) : examiner_(examiner), plan_(examiner.plan()), ground_(ground), rng_(rng), result_(plan_shape()) {}

  Attempt run() {
    const auto weights = pick_houses(plan_.idea, rng_);
    if (weights) weights_ = *weights;
    const auto solution = random_solution(ground_, rng_);
    if (!solution) return std::move(result_);
    Givens givens(ground_, bounds_of(plan_, weights_));
    if (!givens.meet_least(rng_)) return std::move(result_);
    return finish(givens, *solution);
  }

  Attempt finish(const CellSet& cells, const FullGrid& solution, const std::vector<Weight>& weights) {
    weights_ = weights;
    Givens givens(ground_, bounds_of(plan_, weights));
    givens.put_back(cells | ground_.must);
    return finish(givens, solution);
  }

 private:
  Attempt finish(Givens& givens, const FullGrid& solution) {
    result_.stage = Stage::kLaidOut;
    if (!make_proper(givens, solution, plan_.most_givens + kMostSurplusGivens, rng_)) return std::move(result_);
    prune(givens, solution);
    return std::move(result_);
  }

  // Takes givens away in random order: before the plan is met whatever is superfluous, from then on what the plan allows.
  // Where every look at the idea is dear, only the end is looked at.
  void prune(Givens& givens, const FullGrid& solution) {
    note(Stage::kProper);
    const bool looks_on_the_way = plan_.idea.kind != PlannedIdea::Kind::kAnyBalance;
    std::vector<Cell> order;
    for (const Cell cell : givens.cells()) order.push_back(cell);
    rng_.shuffle(order);
    bool is_met = looks_on_the_way && follow(givens.cells(), solution);
    for (const Cell cell : order) {
      const CellSet had = givens.cells();
      if (had.size() <= plan_.least_givens || !givens.remove(cell)) continue;
      if (givens.size() < plan_.least_givens || !is_still_proper(solution, givens.cells(), had - givens.cells())) {
        givens.put_back(had);
        continue;
      }
      if (!looks_on_the_way) continue;
      const bool meets = follow(givens.cells(), solution);
      if (is_met && !meets && !plan_.minimal) givens.put_back(had);
      else is_met = meets;
    }
    if (!looks_on_the_way) is_met = follow(givens.cells(), solution);
    // With symmetry, looks or a least number of givens a superfluous one may have had to stay.
    if (plan_.minimal && is_met) is_met = is_minimal(result_.puzzle);
    if (is_met) return;
    result_.way.reset();
    result_.stage = std::min(result_.stage, Stage::kMoved);
  }

  // Proper without `taken`: no grid fits that differs there.
  static bool is_still_proper(const FullGrid& solution, const CellSet& givens, const CellSet& taken) {
    Position without = to_search(solution, givens);
    if (taken.size() == 1) without.eliminate({taken.first(), solution.at(taken.first())});
    const std::uint64_t others = taken.size() == 1 ? 0 : 1;
    const SolutionCount found = count_solutions(without, others + 1, kMostNodes);
    return found.end == SearchEnd::kComplete && found.count == others;
  }

  // Is the plan met with these givens?
  bool follow(const CellSet& cells, const FullGrid& solution) {
    if (cells.size() > plan_.most_givens) return false;
    const Position puzzle = solution.with_givens(cells);
    WayIn way = examiner_.follow(puzzle, weights_);
    note(way.stage);
    if (way.stage != Stage::kMet) return false;
    result_.puzzle = puzzle;
    result_.way = std::move(way);
    return true;
  }
  void note(Stage stage) { result_.stage = std::max(result_.stage, stage); }

  const Examiner& examiner_;
  const Plan& plan_;
  const PlanGround& ground_;
  Rng& rng_;
  std::vector<Weight> weights_;
  Attempt result_;
};

}  // namespace

Attempt Workshop::finish(const FullGrid& solution, const CellSet& givens, const std::vector<Weight>& weights, Rng& rng) const {
  return Try(examiner_, ground_, rng).finish(givens, solution, weights);
}

Attempt Workshop::attempt(Rng& rng) const { return Try(examiner_, ground_, rng).run(); }

}  // namespace cp
