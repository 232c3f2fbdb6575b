// SPDX-License-Identifier: Apache-2.0
#include "verify/argument_check.h"

#include <vector>

#include "base/checked_int.h"
#include "verify/pattern_check.h"

namespace cp {

namespace {

using Kind = Constraint::Kind;

constexpr int kDeepest = 64;  // cases inside cases

class Replay {
 public:
  Replay(const Step& step, const ArgumentReason& reason) : step_(step), reason_(reason) {}

  // Does the argument reach its end from this position?
  CheckResult run(const Argument& argument, Position position, int depth) {
    if (depth > kDeepest) return CheckResult::no("cases lie too deep");
    for (const Line& line : argument.lines) {
      bool breaks = false;
      if (CheckResult taken = take(line, position, breaks); !taken.holds) return taken;
      if (breaks) return CheckResult::yes();
    }
    if (argument.split) return run_cases(argument, position, depth);
    return has_struck_all(position) ? CheckResult::yes() : CheckResult::no("the argument does not reach its end");
  }

 private:
  CheckResult run_cases(const Argument& argument, const Position& position, int depth) {
    if (!is_known(position.shape(), *argument.split)) return CheckResult::no("a constraint is not in the grid");
    const std::vector<Candidate> candidates = allowed(position, *argument.split);
    if (candidates.size() != argument.cases.size()) return CheckResult::no("the cases are not the candidates of the split");
    for (std::size_t i = 0; i < candidates.size(); ++i) {
      Position supposed = position;
      supposed.place(candidates[i].cell, candidates[i].digit);
      if (CheckResult result = run(argument.cases[i], std::move(supposed), depth + 1); !result.holds) return result;
    }
    return CheckResult::yes();
  }

  // Carries the line out. `breaks` is set when it shows that the position is impossible.
  CheckResult take(const Line& line, Position& position, bool& breaks) {
    for (const LinearTerm& term : line.terms) {
      if (!is_known(position.shape(), term.constraint)) return CheckResult::no("a constraint is not in the grid");
    }
    if (line.terms.size() == 1 && line.terms[0].multiplier == -1) return take_lone(line.terms[0].constraint, position, breaks);
    for (const LinearTerm& term : line.terms) {
      if (term.constraint.kind == Kind::kPattern) return CheckResult::no("a pattern cannot be part of a sum");
    }
    return take_sum(line, position, breaks);
  }

  CheckResult take_lone(const Constraint& fact, Position& position, bool& breaks) {
    const std::vector<Candidate> candidates = allowed(position, fact);
    breaks = candidates.empty();
    if (candidates.size() > 1) return CheckResult::no("a line rests on one candidate where there are more");
    if (!breaks && !position.is_placed(candidates[0].cell)) position.place(candidates[0].cell, candidates[0].digit);
    return CheckResult::yes();
  }

  CheckResult take_sum(const Line& line, Position& position, bool& breaks) {
    const Shape& shape = position.shape();
    std::vector<CheckedInt> coefficient(static_cast<std::size_t>(shape.cell_count() * shape.side()));
    CheckedInt right;
    for (const LinearTerm& term : line.terms) {
      right += term.multiplier;
      for (const Candidate& candidate : allowed(position, term.constraint)) {
        if (position.is_placed(candidate.cell)) right -= term.multiplier;
        else coefficient[static_cast<std::size_t>(candidate.cell.index * shape.side() + candidate.digit.index)] += term.multiplier;
      }
    }
    if (!right.is_ok()) return CheckResult::no("overflow");
    for (const CheckedInt& value : coefficient) {
      if (!value.is_ok() || value.value() < 0) return CheckResult::no("a candidate has a negative coefficient");
    }
    breaks = right.value() < 0;
    for (std::size_t i = 0; i < coefficient.size() && !breaks; ++i) {
      if (coefficient[i].value() <= right.value()) continue;
      position.eliminate({Cell(static_cast<int>(i) / shape.side()), Digit(static_cast<int>(i) % shape.side())});
    }
    return CheckResult::yes();
  }

  // The end of a case: with nothing supposed, all eliminations are gone; a supposition must have broken before.
  [[nodiscard]] bool has_struck_all(const Position& position) const {
    if (reason_.supposes_target) return false;
    for (const Candidate& elimination : step_.eliminations) {
      if (position.has(elimination)) return false;
    }
    return true;
  }

  [[nodiscard]] bool is_known(const Shape& shape, const Constraint& fact) const {
    if (fact.kind == Kind::kCell) return fact.place < shape.cell_count();
    if (fact.kind == Kind::kPattern) return fact.place < reason_.patterns.size();
    return fact.place < shape.house_count() && fact.digit.index < shape.side();
  }

  // The candidates that the fact has left, placed digits among them, ordered by cell and digit.
  [[nodiscard]] std::vector<Candidate> allowed(const Position& position, const Constraint& fact) const {
    std::vector<Candidate> candidates;
    if (fact.kind == Kind::kHouse) {
      for (const Cell cell : position.shape().cells(fact.house())) {
        if (position.candidates(cell).has(fact.digit)) candidates.push_back({cell, fact.digit});
      }
    } else if (fact.kind == Kind::kCell) {
      for (const Digit digit : position.candidates(fact.cell())) candidates.push_back({fact.cell(), digit});
    } else {
      const DeadlyPattern& pattern = reason_.patterns[fact.place];
      for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
        for (const Digit digit : position.candidates(pattern.cells[i]) - pattern.digits[i]) candidates.push_back({pattern.cells[i], digit});
      }
    }
    return candidates;
  }

  const Step& step_;
  const ArgumentReason& reason_;
};

}  // namespace

CheckResult check_argument(const Position& before, const Step& step, const ArgumentReason& reason) {
  if (!step.placements.empty()) return CheckResult::no("an argument places nothing");
  for (const DeadlyPattern& pattern : reason.patterns) {
    if (CheckResult judged = check_pattern(before, pattern); !judged.holds) return judged;
  }
  Replay replay(step, reason);
  if (!reason.supposes_target) return replay.run(reason.argument, before, 0);
  for (const Candidate& elimination : step.eliminations) {
    Position supposed = before;
    supposed.place(elimination.cell, elimination.digit);
    if (CheckResult result = replay.run(reason.argument, std::move(supposed), 0); !result.holds) return result;
  }
  return CheckResult::yes();
}

}  // namespace cp
