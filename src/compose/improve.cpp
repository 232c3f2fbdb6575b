// SPDX-License-Identifier: Apache-2.0
#include "compose/improve.h"

#include <algorithm>

#include "exact/minimal.h"
#include "exact/solve.h"

namespace cp {

namespace {

constexpr std::size_t kMostRanked = 40;  // improvements whose cleanness is worked out

class Improver {
 public:
  Improver(const Examiner& examiner, const PlanGround& ground, const Position& puzzle, const ImproveOptions& options)
      : examiner_(examiner), plan_(examiner.plan()), ground_(ground), puzzle_(from_givens(puzzle, puzzle.givens())), options_(options) {}

  Improvements run() {
    result_.before = judge(examiner_, ground_, puzzle_);
    if (puzzle_.has_clash()) return std::move(result_);
    weights_ = plan_.idea.weights;
    if (weights_.empty() && result_.before.way) weights_ = result_.before.way->weights;
    // Looking for the houses anew with every change would take minutes; then one given at a time has to do.
    const bool is_dear = plan_.idea.is_balance() && weights_.empty();
    const auto grid = any_solution(puzzle_);
    const CellSet givens = puzzle_.givens();
    for (const Cell cell : givens) try_change({CellSet::of(cell), {}}, grid);
    const CellSet free = ground_.may - givens;
    if (grid && is_proper(puzzle_)) {
      for (const Cell cell : free) try_change({{}, CellSet::of(cell)}, grid);
      if (options_.most_changes >= 2 && !is_dear) try_pairs(free, grid);
    } else if (grid) {
      // Several solutions: every digit that one more given can have.
      for (const Cell cell : free) {
        for (const Digit digit : puzzle_.candidates(cell)) {
          FullGrid wish = *grid;
          wish.set(cell, digit);
          try_change({{}, CellSet::of(cell)}, wish);
        }
      }
    }
    rank();
    return std::move(result_);
  }

 private:
  void try_pairs(const CellSet& free, const std::optional<FullGrid>& grid) {
    const CellSet givens = puzzle_.givens();
    for (const Cell gone : givens) {
      for (const Cell come : free) try_change({CellSet::of(gone), CellSet::of(come)}, grid);
      for (const Cell other : givens) {
        if (gone < other) try_change({CellSet::of(gone) | CellSet::of(other), {}}, grid);
      }
    }
    for (const Cell come : free) {
      for (const Cell other : free) {
        if (come < other) try_change({{}, CellSet::of(come) | CellSet::of(other)}, grid);
      }
    }
  }

  // Cheap looks first: the points on paper, then whether it is proper, then how far it gets.
  void try_change(const Change& change, const std::optional<FullGrid>& grid) {
    const CellSet kept = puzzle_.givens() - change.dropped;
    Position puzzle = from_givens(puzzle_, kept);
    for (const Cell cell : change.added) puzzle.place_given(cell, grid->at(cell));
    if (puzzle.givens().size() > plan_.most_givens || puzzle.givens().size() < plan_.least_givens) return;
    if (!is_proper(puzzle)) return;
    ++result_.tried;
    const WayIn way = examiner_.follow(puzzle, weights_);
    if (result_.before.way && way.stage < result_.before.way->stage) return;
    Improvement found{change, puzzle, 0, 0, std::nullopt};
    const Judgement judgement = judge_points(examiner_, ground_, puzzle, way);
    found.met = judgement.met();
    found.asked = static_cast<int>(judgement.points.size());
    if (found.asked - found.met >= missing_before() && !result_.before.is_met()) return;
    if (result_.before.is_met() && found.met < found.asked) return;
    candidates_.push_back(std::move(found));
  }

  [[nodiscard]] int missing_before() const { return static_cast<int>(result_.before.points.size()) - result_.before.met(); }

  void rank() {
    const auto fewer_missing = [](const Improvement& a, const Improvement& b) {
      const int missing_a = a.asked - a.met;
      const int missing_b = b.asked - b.met;
      if (missing_a != missing_b) return missing_a < missing_b;
      return (a.change.dropped | a.change.added).size() < (b.change.dropped | b.change.added).size();
    };
    std::stable_sort(candidates_.begin(), candidates_.end(), fewer_missing);
    if (candidates_.size() > kMostRanked) candidates_.erase(candidates_.begin() + kMostRanked, candidates_.end());
    for (Improvement& each : candidates_) {
      if (each.met == each.asked) each.clean = cleanness_of(plan_, each.puzzle, examiner_.follow(each.puzzle, weights_));
    }
    const auto key = [](const Improvement& each) { return each.clean ? each.clean->key() : 0; };
    std::stable_sort(candidates_.begin(), candidates_.end(), [&](const Improvement& a, const Improvement& b) {
      const int missing_a = a.asked - a.met;
      const int missing_b = b.asked - b.met;
      return missing_a != missing_b ? missing_a < missing_b : key(a) < key(b);
    });
    for (Improvement& each : candidates_) {
      const bool is_better = !result_.before.clean || (each.clean && each.clean->key() < result_.before.clean->key());
      if (is_better && result_.best.size() < options_.limit) result_.best.push_back(std::move(each));
    }
  }

  const Examiner& examiner_;
  const Plan& plan_;
  const PlanGround& ground_;
  Position puzzle_;
  ImproveOptions options_;
  std::vector<Weight> weights_;  // of the balance, where one is known
  std::vector<Improvement> candidates_;
  Improvements result_;
};

}  // namespace

Improvements improve(const Examiner& examiner, const PlanGround& ground, const Position& puzzle, const ImproveOptions& options) { return Improver(examiner, ground, puzzle, options).run(); }

}  // namespace cp
