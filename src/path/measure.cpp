// SPDX-License-Identifier: Apache-2.0
#include "path/measure.h"

#include <algorithm>
#include <set>

#include "balance/weighing.h"

namespace cp {

namespace {

// Gathers what the parts of a reason touch.
class Gathering {
 public:
  explicit Gathering(const Position& before) : before_(before) {}

  void add(const Constraint& fact) {
    if (fact.kind == Constraint::Kind::kPattern || !facts_.insert(fact).second) return;
    if (fact.kind == Constraint::Kind::kCell) {
      cells_.add(fact.cell());
      digits_ |= before_.candidates(fact.cell());
      return;
    }
    houses_.insert(fact.house());
    digits_.add(fact.digit);
    cells_ |= before_.places(fact.house(), fact.digit);
  }
  void add(const std::vector<LinearTerm>& terms) {
    for (const LinearTerm& term : terms) add(term.constraint);
  }
  void add(const Argument& argument, Measure& measure) {
    for (const Line& line : argument.lines) {
      add(line.terms);
      ++measure.lines;
    }
    if (!argument.split) return;
    add(*argument.split);
    measure.cases += static_cast<int>(argument.cases.size());
    for (const Argument& each : argument.cases) add(each, measure);
  }
  void add(const DeadlyPattern& pattern) {
    for (const Cell cell : pattern.cells) cells_.add(cell);
    for (const DigitSet digits : pattern.digits) digits_ |= digits;
  }
  void add(const std::vector<Candidate>& candidates) {
    for (const Candidate& each : candidates) digits_.add(each.digit);
  }
  void write_to(Measure& measure) const {
    measure.facts = static_cast<int>(facts_.size());
    measure.houses = static_cast<int>(houses_.size());
    measure.cells = (cells_ & before_.open()).size();
    measure.digits = digits_.size();
  }

 private:
  const Position& before_;
  std::set<Constraint> facts_;
  std::set<House> houses_;
  CellSet cells_;
  DigitSet digits_;
};

Measure of_balance(const BalanceReason& reason, const Position& before) {
  const Weighing weighing = weigh(before, reason.weights);
  const Load load = load_of(weighing, reason);
  Measure measure;
  measure.houses = load.houses;
  measure.cells = load.cells;
  measure.digits = before.shape().side();
  measure.cases = static_cast<int>(reason.cases.size());
  for (const ShareCase& each : reason.cases) measure.lines += static_cast<int>(each.lemmas.size());
  measure.supposes = reason.level >= 4;
  measure.cost = balance_cost(load);
  return measure;
}

int on_one_scale(const Measure& measure) {
  int cost = 10 * measure.facts + 5 * std::max(0, measure.houses - 1);
  if (measure.supposes) cost += 10 + 5 * std::max(0, measure.lines - 2) + 5 * std::max(0, measure.cases - 2);
  if (measure.needs_unique) cost += 20;
  return cost;
}

}  // namespace

Measure measure(const Step& step, const Position& before, const Technique* technique) {
  if (const auto* balance = std::get_if<BalanceReason>(&step.reason)) return of_balance(*balance, before);
  Measure measure;
  Gathering gathering(before);
  if (const auto* lone = std::get_if<LoneReason>(&step.reason)) gathering.add(lone->constraint);
  if (const auto* linear = std::get_if<LinearReason>(&step.reason)) gathering.add(linear->terms);
  if (const auto* argument = std::get_if<ArgumentReason>(&step.reason)) {
    measure.supposes = true;
    measure.needs_unique = !argument->patterns.empty();
    gathering.add(argument->argument, measure);
    for (const DeadlyPattern& pattern : argument->patterns) gathering.add(pattern);
  }
  gathering.add(step.eliminations);
  gathering.add(step.placements);
  gathering.write_to(measure);
  measure.cost = on_one_scale(measure);
  if (technique != nullptr) measure.cost = std::max(measure.cost, technique->cost);
  return measure;
}

}  // namespace cp
