// SPDX-License-Identifier: Apache-2.0
#include "oracle/cadical_oracle.h"

#include <cadical.hpp>

namespace cp::oracle {

namespace {

constexpr int kSatisfiable = 10;  // CaDiCaL's answer codes: 10 yes, 20 no

}  // namespace

CadicalOracle::CadicalOracle(const Position& position)
    : side_(position.shape().side()),
      cells_(position.shape().cell_count()),
      next_free_variable_(cells_ * side_ + 1),
      solver_(std::make_unique<CaDiCaL::Solver>()) {
  solver_->set("quiet", 1);
  encode(position);
}

CadicalOracle::~CadicalOracle() = default;

void CadicalOracle::exactly_one(const std::vector<int>& literals) {
  for (const int literal : literals) solver_->add(literal);
  solver_->add(0);
  for (std::size_t i = 0; i < literals.size(); ++i) {
    for (std::size_t j = i + 1; j < literals.size(); ++j) {
      solver_->add(-literals[i]);
      solver_->add(-literals[j]);
      solver_->add(0);
    }
  }
}

void CadicalOracle::encode(const Position& position) {
  const Shape& shape = position.shape();
  for (const Cell cell : shape.all_cells()) {
    std::vector<int> literals;
    for (const Digit digit : shape.digits()) literals.push_back(literal(cell, digit));
    exactly_one(literals);
    for (const Digit digit : shape.digits() - position.candidates(cell)) {
      solver_->add(-literal(cell, digit));
      solver_->add(0);
    }
  }
  for (int house = 0; house < shape.house_count(); ++house) {
    for (const Digit digit : shape.digits()) {
      std::vector<int> literals;
      for (const Cell cell : shape.cells(House(house))) literals.push_back(literal(cell, digit));
      exactly_one(literals);
    }
  }
}

PlainGrid CadicalOracle::model() {
  PlainGrid grid;
  for (int cell = 0; cell < cells_; ++cell) {
    for (int digit = 0; digit < side_; ++digit) {
      if (solver_->val(literal(Cell(cell), Digit(digit))) > 0) grid.push_back(Digit(digit));
    }
  }
  return grid;
}

void CadicalOracle::forbid(const PlainGrid& grid, int unless) {
  if (unless != 0) solver_->add(unless);
  for (int cell = 0; cell < cells_; ++cell) solver_->add(-literal(Cell(cell), grid[static_cast<std::size_t>(cell)]));
  solver_->add(0);
}

std::optional<PlainGrid> CadicalOracle::find() {
  if (solver_->solve() != kSatisfiable) return std::nullopt;
  return model();
}

bool CadicalOracle::is_possible(Candidate candidate) {
  solver_->assume(literal(candidate.cell, candidate.digit));
  return solver_->solve() == kSatisfiable;
}

void CadicalOracle::block(const PlainGrid& grid) { forbid(grid, 0); }

std::uint64_t CadicalOracle::count(std::uint64_t limit) {
  const int counting = next_free_variable_++;  // while assumed true, the blocking clauses count
  std::uint64_t found = 0;
  while (found < limit) {
    solver_->assume(counting);
    if (solver_->solve() != kSatisfiable) break;
    ++found;
    forbid(model(), -counting);
  }
  solver_->add(-counting);
  solver_->add(0);
  return found;
}

}  // namespace cp::oracle
