// SPDX-License-Identifier: Apache-2.0
#include "claim/linear_form.h"

#include <map>

namespace cp {

namespace {

Formula sum(Row row) { return {Formula::Kind::kRow, std::move(row), {}}; }

Formula any_of_parts(std::vector<Formula> parts) {
  if (parts.size() == 1) return std::move(parts.front());
  return {Formula::Kind::kAny, {}, std::move(parts)};
}

Row negative(Row row) {
  for (RowTerm& term : row.terms) term.factor = -term.factor;
  row.least = -row.least;
  return row;
}

class Compiler {
 public:
  explicit Compiler(const Shape& shape) : shape_(shape) {}

  Formula compile(const Claim& claim, bool holds) {
    switch (claim.kind) {
      case Claim::Kind::kAll:
      case Claim::Kind::kAny: return parts(claim, holds);
      case Claim::Kind::kNot: return compile(claim.parts.front(), !holds);
      case Claim::Kind::kValues: return values(claim, holds);
      case Claim::Kind::kSame: return same(claim, holds);
      case Claim::Kind::kCount: return count(claim, holds);
    }
    return {};
  }

 private:
  Formula parts(const Claim& claim, bool holds) {
    std::vector<Formula> compiled;
    for (const Claim& part : claim.parts) compiled.push_back(compile(part, holds));
    if ((claim.kind == Claim::Kind::kAll) == holds) return {Formula::Kind::kAll, {}, std::move(compiled)};
    return any_of_parts(std::move(compiled));
  }

  Formula values(const Claim& claim, bool holds) {
    Row outside;
    for (const CellCount& item : claim.left) {
      for (const Digit digit : shape_.digits() - claim.digits) outside.terms.push_back({variable_of(shape_, {item.cell, digit}), 1});
    }
    outside.least = holds ? 0 : 1;
    outside.is_exact = holds;
    return sum(std::move(outside));
  }

  // Copies of the digit in the left group minus those in the right one.
  Row difference(const Claim& claim, Digit digit) {
    std::map<int, int> factors;
    for (const CellCount& item : claim.left) factors[variable_of(shape_, {item.cell, digit})] += item.times;
    for (const CellCount& item : claim.right) factors[variable_of(shape_, {item.cell, digit})] -= item.times;
    Row row;
    for (const auto& [variable, factor] : factors) {
      if (factor != 0) row.terms.push_back({variable, factor});
    }
    row.least = claim.surplus[digit.index];
    return row;
  }

  Formula same(const Claim& claim, bool holds) {
    std::vector<Formula> rows;
    for (const Digit digit : shape_.digits()) {
      Row row = difference(claim, digit);
      row.is_exact = holds;
      // Both sides are equally large, so if they differ, some digit is too frequent on the left.
      if (!holds) row.least += 1;
      rows.push_back(sum(std::move(row)));
    }
    if (holds) return {Formula::Kind::kAll, {}, std::move(rows)};
    if (is_pair(claim)) return differing_pair(claim);
    return any_of_parts(std::move(rows));
  }

  static bool is_pair(const Claim& claim) {
    return claim.left.size() == 1 && claim.right.size() == 1 && claim.left.front().times == 1 && claim.right.front().times == 1 && claim.left != claim.right;
  }

  // Two cells with different digits: no digit in both.
  Formula differing_pair(const Claim& claim) {
    std::vector<Formula> rows;
    for (const Digit digit : shape_.digits()) {
      rows.push_back(sum({{{variable_of(shape_, {claim.left.front().cell, digit}), -1}, {variable_of(shape_, {claim.right.front().cell, digit}), -1}}, -1, false}));
    }
    return {Formula::Kind::kAll, {}, std::move(rows)};
  }

  Formula count(const Claim& claim, bool holds) {
    Row row;
    for (const CellCount& item : claim.left) {
      for (const Digit digit : claim.digits) row.terms.push_back({variable_of(shape_, {item.cell, digit}), item.times});
    }
    row.least = claim.least;
    if (holds && claim.least == claim.most) {
      row.is_exact = true;
      return sum(std::move(row));
    }
    const int size = size_of(claim.left);
    std::vector<Formula> rows;
    if (holds && claim.least > 0) rows.push_back(sum(row));
    if (!holds && claim.most < size) rows.push_back(sum({row.terms, claim.most + 1, false}));
    Row upper = negative(row);
    upper.least = holds ? -claim.most : 1 - claim.least;
    if (holds ? claim.most < size : claim.least > 0) rows.push_back(sum(std::move(upper)));
    if (holds) return {Formula::Kind::kAll, {}, std::move(rows)};
    return any_of_parts(std::move(rows));
  }

  const Shape& shape_;
};

class Flattener {
 public:
  explicit Flattener(int& next_option) : next_option_(next_option) {}

  // `guard` is an option, or -1.
  void flatten(const Formula& formula, int guard) {
    if (formula.kind == Formula::Kind::kRow) return add(formula.row, guard);
    const int first = next_option_;
    if (formula.kind == Formula::Kind::kAny) {
      next_option_ += static_cast<int>(formula.parts.size());
      Row some;
      for (int option = first; option < next_option_; ++option) some.terms.push_back({option, 1});
      some.least = 1;
      add(some, guard);
    }
    for (std::size_t i = 0; i < formula.parts.size(); ++i) {
      flatten(formula.parts[i], formula.kind == Formula::Kind::kAny ? first + static_cast<int>(i) : guard);
    }
  }

  std::vector<Row> rows;

 private:
  void add(const Row& row, int guard) {
    if (guard < 0) return rows.push_back(row);
    add_guarded(row, guard);
    if (row.is_exact) add_guarded(negative(row), guard);
  }

  // With the option false the row says nothing: its smallest sum is enough.
  void add_guarded(Row row, int guard) {
    int smallest = 0;
    for (const RowTerm& term : row.terms) smallest += term.factor < 0 ? term.factor : 0;
    const int lift = row.least - smallest;
    row.is_exact = false;
    row.least = smallest;
    row.terms.push_back({guard, -lift});
    rows.push_back(std::move(row));
  }

  int& next_option_;
};

}  // namespace

Formula formula_of(const Shape& shape, const Claim& claim, bool holds) { return Compiler(shape).compile(claim, holds); }

std::vector<Row> flattened(const Formula& formula, int& next_option) {
  Flattener flattener(next_option);
  flattener.flatten(formula, -1);
  return std::move(flattener.rows);
}

Row cell_row(const Shape& shape, Cell cell) {
  Row row{{}, 1, true};
  for (const Digit digit : shape.digits()) row.terms.push_back({variable_of(shape, {cell, digit}), 1});
  return row;
}

Row weighed_row(const Shape& shape, const std::vector<Weight>& weights, Digit digit) {
  std::map<int, int> factors;
  Row row{{}, 0, true};
  for (const auto& [house, weight] : weights) {
    row.least += weight;
    for (const Cell cell : shape.cells(house)) factors[variable_of(shape, {cell, digit})] += weight;
  }
  for (const auto& [variable, factor] : factors) {
    if (factor != 0) row.terms.push_back({variable, factor});
  }
  return row;
}

std::vector<Row> rows_of(const Shape& shape, const CertificateFact& fact, int& next_option) {
  std::vector<Row> rows;
  if (fact.kind == CertificateFact::Kind::kClaim) return flattened(fact.formula, next_option);
  if (fact.kind == CertificateFact::Kind::kMarks) {
    Row none{{}, 0, true};
    for (const Digit digit : shape.digits() - fact.digits) none.terms.push_back({variable_of(shape, {fact.cell, digit}), 1});
    rows.push_back(std::move(none));
    return rows;
  }
  const bool is_house = fact.kind == CertificateFact::Kind::kHouse;
  for (const Digit digit : shape.digits()) {
    rows.push_back(weighed_row(shape, is_house ? std::vector<Weight>{{fact.house, 1}} : fact.weights, digit));
  }
  return rows;
}

}  // namespace cp
