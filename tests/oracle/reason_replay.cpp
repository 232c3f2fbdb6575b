// SPDX-License-Identifier: Apache-2.0
#include "oracle/reason_replay.h"

#include <algorithm>
#include <vector>

namespace cp::oracle {

namespace {

bool is_about(const Shape& shape, const Constraint& constraint, Candidate candidate) {
  if (constraint.kind == Constraint::Kind::kCell) return constraint.cell() == candidate.cell;
  return constraint.digit == candidate.digit && shape.cells(constraint.house()).has(candidate.cell);
}

// Candidates of open cells; digits of placed cells.
std::vector<Candidate> candidates_of(const Position& position, bool placed) {
  std::vector<Candidate> all;
  for (const Cell cell : position.shape().all_cells()) {
    if (position.is_placed(cell) != placed) continue;
    for (const Digit digit : position.candidates(cell)) all.push_back({cell, digit});
  }
  return all;
}

std::string form_fault(const Position& position, const Step& step) {
  if (step.placements.empty() && step.eliminations.empty()) return "the step changes nothing";
  if (!std::is_sorted(step.eliminations.begin(), step.eliminations.end())) return "eliminations are not in order";
  if (std::adjacent_find(step.eliminations.begin(), step.eliminations.end()) != step.eliminations.end()) return "an elimination stands twice";
  for (const auto* list : {&step.placements, &step.eliminations}) {
    for (const Candidate& each : *list) {
      if (position.is_placed(each.cell) || !position.has(each)) return "a candidate of the step is not there";
    }
  }
  return {};
}

std::string lone_fault(const Position& position, const Step& step, const LoneReason& reason) {
  std::vector<Candidate> left;
  for (const bool placed : {false, true}) {
    for (const Candidate& each : candidates_of(position, placed)) {
      if (is_about(position.shape(), reason.constraint, each)) left.push_back(each);
    }
  }
  if (left.size() != 1) return "the fact has more or fewer than one candidate left";
  if (step.placements != left || !step.eliminations.empty()) return "the step is not just that candidate";
  return {};
}

std::string linear_fault(const Position& position, const Step& step, const LinearReason& reason) {
  const auto coefficient = [&](Candidate candidate) {
    long long sum = 0;
    for (const LinearTerm& term : reason.terms) sum += is_about(position.shape(), term.constraint, candidate) ? term.multiplier : 0;
    return sum;
  };
  long long right = 0;
  for (const LinearTerm& term : reason.terms) right += term.multiplier;
  for (const Candidate& digit : candidates_of(position, true)) right -= coefficient(digit);
  std::vector<Candidate> false_ones;
  for (const Candidate& each : candidates_of(position, false)) {
    if (coefficient(each) < 0) return "an open candidate has a negative coefficient";
    if (coefficient(each) > right) false_ones.push_back(each);
  }
  if (!step.placements.empty()) return "a linear reason places nothing";
  return step.eliminations == false_ones ? "" : "the reason strikes out other candidates than the step";
}

}  // namespace

std::string replay_fault(const Position& position, const Step& step) {
  if (std::string fault = form_fault(position, step); !fault.empty()) return fault;
  if (const auto* lone = std::get_if<LoneReason>(&step.reason)) return lone_fault(position, step, *lone);
  if (const auto* linear = std::get_if<LinearReason>(&step.reason)) return linear_fault(position, step, *linear);
  return "balance reasons are not replayed here";
}

}  // namespace cp::oracle
