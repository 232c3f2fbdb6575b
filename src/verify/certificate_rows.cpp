// SPDX-License-Identifier: Apache-2.0
#include "verify/certificate_rows.h"

#include <cstdlib>
#include <map>

namespace cp::replay {

namespace {

constexpr int kLargest = 10'000;       // of a factor or a bound: sums of a grid's variables cannot overflow
constexpr int kDeepest = 200;          // parts within parts
constexpr std::size_t kMostRows = 100'000;

bool is_small(const Row& row) {
  for (const RowTerm& term : row.terms) {
    if (std::abs(term.factor) > kLargest || term.variable < 0) return false;
  }
  return std::abs(row.least) <= kLargest && row.terms.size() <= 100'000;
}

Row reversed(Row row) {
  for (RowTerm& term : row.terms) term.factor = -term.factor;
  row.least = -row.least;
  return row;
}

// "If the option is true, the row holds": at its smallest the row must lack nothing once the option is false.
Row under_option(Row row, int option) {
  int smallest = 0;
  for (const RowTerm& term : row.terms) smallest += term.factor < 0 ? term.factor : 0;
  row.terms.push_back({option, smallest - row.least});
  row.least = smallest;
  row.is_exact = false;
  return row;
}

struct Flat {
  std::vector<Row> rows;
  int next_option = 0;
  bool is_ok = true;

  void take_row(const Row& row, int option) {
    is_ok = is_ok && is_small(row) && rows.size() < kMostRows;
    if (!is_ok) return;
    if (option < 0) return rows.push_back(row);
    rows.push_back(under_option(row, option));
    if (row.is_exact) rows.push_back(under_option(reversed(row), option));
  }

  void take(const Formula& formula, int option, int depth) {
    is_ok = is_ok && depth < kDeepest;
    if (!is_ok) return;
    if (formula.kind == Formula::Kind::kRow) return take_row(formula.row, option);
    const int first = next_option;
    const bool is_any = formula.kind == Formula::Kind::kAny;
    if (is_any) {
      Row some{{}, 1, false};
      for (std::size_t i = 0; i < formula.parts.size(); ++i) some.terms.push_back({next_option++, 1});
      take_row(some, option);
    }
    for (std::size_t i = 0; i < formula.parts.size(); ++i) take(formula.parts[i], is_any ? first + static_cast<int>(i) : option, depth + 1);
  }
};

// For each digit: the weights of the houses of a cell, added up, times the digit being there, make the sum of the weights.
std::vector<Row> weighed(const Shape& shape, const std::vector<Weight>& weights, bool& is_ok) {
  std::map<int, int> weight_of;
  int surplus = 0;
  for (const auto& [house, weight] : weights) {
    is_ok = is_ok && house.index < shape.house_count() && std::abs(weight) <= 100 && weights.size() <= 100;
    if (!is_ok) return {};
    surplus += weight;
    for (const Cell cell : shape.cells(house)) weight_of[cell.index] += weight;
  }
  std::vector<Row> rows;
  for (int digit = 0; digit < shape.side(); ++digit) {
    Row row{{}, surplus, true};
    for (const auto& [cell, weight] : weight_of) {
      if (weight != 0) row.terms.push_back({cell * shape.side() + digit, weight});
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace

std::vector<Row> rows_of_formula(const Formula& formula, int& next_option, bool& is_ok) {
  Flat flat;
  flat.next_option = next_option;
  flat.take(formula, -1, 0);
  next_option = flat.next_option;
  is_ok = is_ok && flat.is_ok;
  return std::move(flat.rows);
}

std::vector<Row> rows_of_fact(const Shape& shape, const CertificateFact& fact, int& next_option, bool& is_ok) {
  switch (fact.kind) {
    case CertificateFact::Kind::kHouse: return weighed(shape, {{fact.house, 1}}, is_ok);
    case CertificateFact::Kind::kBalance: return weighed(shape, fact.weights, is_ok);
    case CertificateFact::Kind::kClaim: return rows_of_formula(fact.formula, next_option, is_ok);
    case CertificateFact::Kind::kMarks: break;
  }
  is_ok = is_ok && fact.cell.index < shape.cell_count();
  Row none{{}, 0, true};
  for (const Digit digit : shape.digits() - fact.digits) none.terms.push_back({fact.cell.index * shape.side() + digit.index, 1});
  return {none};
}

}  // namespace cp::replay
