// SPDX-License-Identifier: Apache-2.0
#include "claim/fact_search.h"

#include <algorithm>
#include <numeric>

#include "claim/linear_form.h"

namespace cp {

FactSearch::FactSearch(const Shape& shape, std::vector<CertificateFact> facts, const Formula& denied) : shape_(shape), facts_(std::move(facts)) {
  int next = candidate_variables(shape);
  for (const CertificateFact& fact : facts_) {
    const int before = next;
    rows_.push_back(rows_of(shape, fact, next));
    options_.push_back(next - before);
  }
  const std::vector<Row> denial = flattened(denied, next);
  for (std::size_t i = 0; i < facts_.size(); ++i) selectors_.push_back(next++);
  solver_ = std::make_unique<RowSolver>(next);
  for (const int selector : selectors_) solver_->leave_open(selector);
  for (const Cell cell : shape.all_cells()) solver_->add(cell_row(shape, cell), 0);
  for (const Row& row : denial) solver_->add(row, 0);
  for (std::size_t i = 0; i < facts_.size(); ++i) {
    for (const Row& row : rows_[i]) solver_->add(row, 0, {selectors_[i]});
    if (facts_[i].kind != CertificateFact::Kind::kMarks) continue;
    // Cells with few digits first.
    for (const Digit digit : facts_[i].digits) solver_->prefer(variable_of(shape, {facts_[i].cell, digit}), static_cast<std::uint64_t>(100 - facts_[i].digits.size()));
  }
  add_sums(denial);
}

void FactSearch::add_sums(const std::vector<Row>& denial) {
  sums_ = house_sums(shape_, facts_, denial);
  for (const HouseSum& sum : sums_) {
    std::vector<int> guards;
    for (const RowUse& use : sum.uses) {
      if (use.row.source == RowName::Source::kFact) guards.push_back(selectors_[static_cast<std::size_t>(use.row.index)]);
    }
    solver_->add(sum.row, 0, guards);
  }
}

std::vector<HouseSum> FactSearch::sums_within(const std::vector<int>& facts) const {
  // Options of the denial come after those of all facts.
  int gone = std::accumulate(options_.begin(), options_.end(), 0);
  for (const int fact : facts) gone -= options_[static_cast<std::size_t>(fact)];
  std::vector<HouseSum> within;
  for (HouseSum sum : sums_) {
    bool is_within = true;
    for (RowUse& use : sum.uses) {
      if (use.row.source != RowName::Source::kFact) continue;
      const auto at = std::lower_bound(facts.begin(), facts.end(), use.row.index);
      is_within = is_within && at != facts.end() && *at == use.row.index;
      use.row.index = static_cast<int>(at - facts.begin());
    }
    if (!is_within) continue;
    for (RowTerm& term : sum.row.terms) term.variable -= term.variable >= candidate_variables(shape_) ? gone : 0;
    within.push_back(std::move(sum));
  }
  return within;
}

FactSearch::End FactSearch::solve(const std::vector<int>& facts, std::uint64_t& failures, const std::vector<Lit>& also) {
  std::vector<Lit> assumptions = also;
  for (const int fact : facts) assumptions.push_back(lit_of(selectors_[static_cast<std::size_t>(fact)], true));
  const End end = solver_->solve(assumptions, failures);
  core_.clear();
  if (end != End::kImpossible) return end;
  for (const Lit lit : solver_->core()) {
    const int number = variable_of(lit) - (selectors_.empty() ? 0 : selectors_.front());
    if (number >= 0 && number < static_cast<int>(selectors_.size())) core_.push_back(number);
  }
  std::sort(core_.begin(), core_.end());
  return end;
}

Assignment FactSearch::assignment() const {
  Assignment grid(shape_);
  for (const Cell cell : shape_.all_cells()) {
    for (const Digit digit : shape_.digits()) {
      if (solver_->is_true_in_model(variable_of(shape_, {cell, digit}))) grid.set(cell, digit);
    }
  }
  return grid;
}

bool FactSearch::is_met(const Row& row) const {
  int sum = 0;
  for (const RowTerm& term : row.terms) sum += solver_->is_true_in_model(term.variable) ? term.factor : 0;
  return row.is_exact ? sum == row.least : sum >= row.least;
}

std::vector<int> FactSearch::met_facts() const {
  std::vector<int> met;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (std::all_of(rows_[i].begin(), rows_[i].end(), [this](const Row& row) { return is_met(row); })) met.push_back(static_cast<int>(i));
  }
  return met;
}

}  // namespace cp
