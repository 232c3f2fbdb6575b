// SPDX-License-Identifier: Apache-2.0
#include "verify/linear_check.h"

#include <vector>

#include "base/checked_int.h"

namespace cp {

namespace {

// All candidates of one constraint that the position still allows, placed digits among them.
std::vector<Candidate> allowed(const Position& position, const Constraint& constraint) {
  std::vector<Candidate> candidates;
  if (constraint.kind == Constraint::Kind::kCell) {
    for (const Digit digit : position.candidates(constraint.cell())) candidates.push_back({constraint.cell(), digit});
    return candidates;
  }
  for (const Cell cell : position.shape().cells(constraint.house())) {
    if (position.candidates(cell).has(constraint.digit)) candidates.push_back({cell, constraint.digit});
  }
  return candidates;
}

bool is_in_shape(const Shape& shape, const Constraint& constraint) {
  if (constraint.kind == Constraint::Kind::kCell) return constraint.place < shape.cell_count();
  return constraint.kind == Constraint::Kind::kHouse && constraint.place < shape.house_count() && constraint.digit.index < shape.side();
}

}  // namespace

CheckResult check_lone(const Position& before, const Step& step, const LoneReason& reason) {
  if (!is_in_shape(before.shape(), reason.constraint)) return CheckResult::no("the constraint is not in the grid");
  const auto candidates = allowed(before, reason.constraint);
  if (candidates.size() != 1) return CheckResult::no("the constraint does not have exactly one candidate");
  if (step.placements.size() != 1 || step.placements[0] != candidates[0]) return CheckResult::no("the step places something else");
  if (before.is_placed(candidates[0].cell)) return CheckResult::no("the cell is placed already");
  if (!step.eliminations.empty()) return CheckResult::no("a lone candidate strikes out nothing by itself");
  return CheckResult::yes();
}

CheckResult check_linear(const Position& before, const Step& step, const LinearReason& reason) {
  const Shape& shape = before.shape();
  std::vector<CheckedInt> coefficient(static_cast<std::size_t>(shape.cell_count() * shape.side()));
  const auto at = [&](const Candidate& candidate) -> CheckedInt& {
    return coefficient[static_cast<std::size_t>(candidate.cell.index * shape.side() + candidate.digit.index)];
  };
  CheckedInt right;
  for (const LinearTerm& term : reason.terms) {
    if (!is_in_shape(shape, term.constraint)) return CheckResult::no("a constraint is not in the grid");
    right += term.multiplier;
    for (const Candidate& candidate : allowed(before, term.constraint)) {
      // A placed digit is true: its share moves to the right side.
      if (before.is_placed(candidate.cell)) right -= term.multiplier;
      else at(candidate) += term.multiplier;
    }
  }
  if (!right.is_ok()) return CheckResult::no("overflow");
  for (const CheckedInt& value : coefficient) {
    if (!value.is_ok() || value.value() < 0) return CheckResult::no("a candidate has a negative coefficient");
  }
  if (!step.placements.empty()) return CheckResult::no("a weighed sum places nothing");
  for (const Candidate& elimination : step.eliminations) {
    if (at(elimination).value() <= right.value()) return CheckResult::no("an elimination does not follow from the sum");
  }
  return CheckResult::yes();
}

}  // namespace cp
