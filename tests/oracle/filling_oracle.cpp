// SPDX-License-Identifier: Apache-2.0
#include "oracle/filling_oracle.h"

#include <cadical.hpp>
#include <cstdlib>

namespace cp::oracle {

FillingOracle::FillingOracle(const Position& position, const std::vector<Weight>& weights)
    : position_(position), solver_(std::make_unique<CaDiCaL::Solver>()) {
  const Shape& shape = position.shape();
  int surplus = 0;
  for (const auto& [house, weight] : weights) {
    surplus += weight;
    for (const Cell cell : shape.cells(house)) units_[cell.index] += weight;
  }
  std::vector<int> tally(static_cast<std::size_t>(shape.side()), surplus);
  for (const Cell cell : shape.all_cells()) {
    if (units_[cell.index] == 0) continue;
    if (const auto digit = position.digit_at(cell)) tally[digit->index] -= units_[cell.index];
    else cells_.add(cell);
  }
  add_rules();
  for (const Digit digit : shape.digits()) add_tally(digit, tally[digit.index]);
}

FillingOracle::~FillingOracle() = default;

void FillingOracle::clause(const std::vector<int>& literals) {
  for (const int literal : literals) solver_->add(literal);
  solver_->add(0);
}

// One candidate a cell, no digit twice in a house, and houses whose places all lie inside.
void FillingOracle::add_rules() {
  const Shape& shape = position_.shape();
  for (const Cell cell : cells_) {
    std::vector<int> some;
    for (const Digit digit : shape.digits()) {
      if (!position_.candidates(cell).has(digit)) {
        clause({-literal(cell, digit)});
        continue;
      }
      some.push_back(literal(cell, digit));
      for (const Digit other : shape.digits()) {
        if (digit < other) clause({-literal(cell, digit), -literal(cell, other)});
      }
      for (const Cell peer : cells_ & shape.peers(cell)) clause({-literal(cell, digit), -literal(peer, digit)});
    }
    clause(some);
  }
  for (int i = 0; i < shape.house_count(); ++i) {
    for (const Digit digit : shape.digits()) {
      const CellSet places = position_.places(House(i), digit);
      if (places.is_empty() || !places.is_subset_of(cells_)) continue;
      std::vector<int> some;
      for (const Cell cell : places) some.push_back(literal(cell, digit));
      clause(some);
    }
  }
}

// Sequential counter: C. Sinz, "Towards an optimal CNF encoding of Boolean cardinality constraints", CP 2005.
void FillingOracle::at_most(const std::vector<int>& literals, int most) {
  if (most < 0) {
    clause({});
    return;
  }
  std::vector<int> above;  // above[j]: at least j+1 of the literals so far are true
  for (const int literal : literals) {
    std::vector<int> next;
    for (int j = 0; j < most; ++j) next.push_back(next_variable_++);
    clause(most > 0 ? std::vector<int>{-literal, next[0]} : std::vector<int>{-literal});
    for (std::size_t j = 0; j < above.size(); ++j) {
      clause({-above[j], next[j]});
      if (j + 1 < next.size()) clause({-above[j], -literal, next[j + 1]});
      else clause({-above[j], -literal});
    }
    above = next;
  }
}

// copies left - copies right = tally, as: true literals among (left, not right) = tally + right units.
void FillingOracle::add_tally(Digit digit, int tally) {
  std::vector<int> literals;
  int right = 0;
  for (const Cell cell : cells_) {
    const int units = units_[cell.index];
    for (int i = 0; i < std::abs(units); ++i) literals.push_back(units > 0 ? literal(cell, digit) : -literal(cell, digit));
    if (units < 0) right -= units;
  }
  const int wanted = tally + right;
  at_most(literals, wanted);
  for (int& literal : literals) literal = -literal;
  at_most(literals, static_cast<int>(literals.size()) - wanted);
}

bool FillingOracle::has_filling() { return solver_->solve() == 10; }

bool FillingOracle::goes_with(Candidate candidate) {
  if (cells_.has(candidate.cell)) solver_->assume(literal(candidate.cell, candidate.digit));
  for (const Cell cell : cells_ & position_.shape().peers(candidate.cell)) solver_->assume(-literal(cell, candidate.digit));
  return solver_->solve() == 10;
}

}  // namespace cp::oracle
