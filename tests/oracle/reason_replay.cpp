// SPDX-License-Identifier: Apache-2.0
#include "oracle/reason_replay.h"

#include <algorithm>
#include <map>
#include <set>
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

// ---- arguments: plain sets of candidates, true ones among them -------------------------------------------------------

using Candidates = std::set<Candidate>;

// Puts the candidate in: everything that shares a fact with it goes.
Candidates supposed(const Shape& shape, const Candidates& left, Candidate candidate) {
  Candidates kept;
  for (const Candidate& each : left) {
    const bool same_cell = each.cell == candidate.cell && each.digit != candidate.digit;
    const bool same_house = each.digit == candidate.digit && shape.peers(candidate.cell).has(each.cell);
    if (!same_cell && !same_house) kept.insert(each);
  }
  return kept;
}

struct ArgumentReplay {
  const Shape& shape;
  const Step& step;
  const ArgumentReason& reason;

  [[nodiscard]] bool concerns(const Constraint& fact, Candidate candidate) const {
    if (fact.kind != Constraint::Kind::kPattern) return is_about(shape, fact, candidate);
    const DeadlyPattern& pattern = reason.patterns.at(fact.place);
    for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
      if (pattern.cells[i] == candidate.cell) return !pattern.digits[i].has(candidate.digit);
    }
    return false;
  }
  [[nodiscard]] Candidates members(const Constraint& fact, const Candidates& left) const {
    Candidates in;
    for (const Candidate& each : left) {
      if (concerns(fact, each)) in.insert(each);
    }
    return in;
  }
  // True when the line shows the candidates impossible.
  bool take(const Line& line, Candidates& left, std::string& fault) {
    if (line.terms.size() == 1 && line.terms[0].multiplier == -1) {
      const Candidates in = members(line.terms[0].constraint, left);
      if (in.size() > 1) fault = "a line rests on one candidate where there are more";
      if (in.size() == 1) {
        left = supposed(shape, left, *in.begin());
        true_ones.insert(*in.begin());
      }
      return in.empty();
    }
    std::map<Candidate, long long> coefficient;
    long long right = 0;
    for (const LinearTerm& term : line.terms) {
      if (term.constraint.kind == Constraint::Kind::kPattern) fault = "a pattern in a sum";
      right += term.multiplier;
      for (const Candidate& each : members(term.constraint, left)) coefficient[each] += term.multiplier;
    }
    for (const Candidate& sure : true_ones) {
      if (left.contains(sure) && coefficient.contains(sure)) right -= coefficient[sure], coefficient.erase(sure);
    }
    for (const auto& [candidate, value] : coefficient) {
      if (value < 0) fault = "an open candidate has a negative coefficient";
    }
    for (const auto& [candidate, value] : coefficient) {
      if (value > right) left.erase(candidate);
    }
    return right < 0;
  }
  std::string run(const Argument& argument, Candidates left, std::set<Candidate> sure) {
    true_ones = std::move(sure);
    for (const Line& line : argument.lines) {
      std::string fault;
      const bool breaks = take(line, left, fault);
      if (!fault.empty()) return fault;
      if (breaks) return {};
    }
    if (argument.split) {
      const Candidates cases = members(*argument.split, left);
      if (cases.size() != argument.cases.size()) return "other cases than candidates";
      std::size_t number = 0;
      const std::set<Candidate> so_far = true_ones;
      for (const Candidate& each : cases) {
        std::set<Candidate> more = so_far;
        more.insert(each);
        if (std::string fault = run(argument.cases[number++], supposed(shape, left, each), more); !fault.empty()) return fault;
      }
      return {};
    }
    if (reason.supposes_target) return "supposing the elimination leads to nothing";
    for (const Candidate& gone : step.eliminations) {
      if (left.contains(gone)) return "a case leaves an elimination";
    }
    return {};
  }
  std::set<Candidate> true_ones;
};

// Two digits a cell; each house has every digit of the pattern in exactly two of its cells: then each cell can take its other digit.
bool has_pairs_everywhere(const Shape& shape, const DeadlyPattern& pattern) {
  for (int house = 0; house < shape.house_count(); ++house) {
    std::multiset<Digit> seen;
    for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
      if (pattern.digits[i].size() != 2) return false;
      if (!shape.cells(House(house)).has(pattern.cells[i])) continue;
      for (const Digit digit : pattern.digits[i]) seen.insert(digit);
    }
    for (const Digit digit : seen) {
      if (seen.count(digit) != 2) return false;
    }
  }
  return true;
}

// Filling a small pattern in all ways, grouped by what the houses then hold; large ones by the rule of pairs.
bool is_deadly(const Position& position, const DeadlyPattern& pattern) {
  const Shape& shape = position.shape();
  for (const Cell cell : pattern.cells) {
    if (position.givens().has(cell)) return false;
  }
  if (pattern.cells.size() > 6) return has_pairs_everywhere(shape, pattern);
  DigitSet used;  // a refilling with the same digits in every house needs no others
  for (const DigitSet digits : pattern.digits) used |= digits;
  std::vector<std::vector<Digit>> fillings = {{}};
  for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
    std::vector<std::vector<Digit>> longer;
    for (const auto& filling : fillings) {
      for (const Digit digit : used) {
        bool fits = true;
        for (std::size_t k = 0; k < i; ++k) fits = fits && !(filling[k] == digit && shape.peers(pattern.cells[k]).has(pattern.cells[i]));
        if (!fits) continue;
        longer.push_back(filling);
        longer.back().push_back(digit);
      }
    }
    fillings = std::move(longer);
  }
  std::map<std::set<std::pair<House, Digit>>, int> times;
  const auto content = [&](const std::vector<Digit>& filling) {
    std::set<std::pair<House, Digit>> all;
    for (std::size_t i = 0; i < filling.size(); ++i) {
      for (const House house : shape.houses_of(pattern.cells[i])) all.insert({house, filling[i]});
    }
    return all;
  };
  for (const auto& filling : fillings) ++times[content(filling)];
  for (const auto& filling : fillings) {
    bool is_inside = true;
    for (std::size_t i = 0; i < filling.size(); ++i) is_inside = is_inside && pattern.digits[i].has(filling[i]);
    if (is_inside && times[content(filling)] < 2) return false;
  }
  return true;
}

std::string argument_fault(const Position& position, const Step& step, const ArgumentReason& reason) {
  if (!step.placements.empty()) return "an argument places nothing";
  for (const DeadlyPattern& pattern : reason.patterns) {
    if (!is_deadly(position, pattern)) return "a pattern is not deadly";
  }
  Candidates left;
  Candidates sure;
  for (const bool placed : {false, true}) {
    for (const Candidate& each : candidates_of(position, placed)) {
      left.insert(each);
      if (placed) sure.insert(each);
    }
  }
  if (!reason.supposes_target) return ArgumentReplay{position.shape(), step, reason, {}}.run(reason.argument, left, sure);
  for (const Candidate& target : step.eliminations) {
    Candidates true_ones = sure;
    true_ones.insert(target);
    const std::string fault = ArgumentReplay{position.shape(), step, reason, {}}.run(reason.argument, supposed(position.shape(), left, target), true_ones);
    if (!fault.empty()) return fault;
  }
  return {};
}

}  // namespace

std::string replay_fault(const Position& position, const Step& step) {
  if (std::string fault = form_fault(position, step); !fault.empty()) return fault;
  if (const auto* lone = std::get_if<LoneReason>(&step.reason)) return lone_fault(position, step, *lone);
  if (const auto* linear = std::get_if<LinearReason>(&step.reason)) return linear_fault(position, step, *linear);
  if (const auto* argument = std::get_if<ArgumentReason>(&step.reason)) return argument_fault(position, step, *argument);
  return "balance reasons are not replayed here";
}

}  // namespace cp::oracle
