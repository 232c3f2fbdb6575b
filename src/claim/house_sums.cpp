// SPDX-License-Identifier: Apache-2.0
#include "claim/house_sums.h"

#include <map>
#include <numeric>
#include <optional>

#include "claim/linear_form.h"

namespace cp {

namespace {

// A fraction; numbers stay tiny, since the houses of a grid overlap in few ways. A sum that would not is given up.
struct Fraction {
  std::int64_t over = 0;
  std::int64_t under = 1;

  [[nodiscard]] bool is_small() const { return std::abs(over) < 100'000 && under < 100'000; }
  [[nodiscard]] Fraction reduced() const {
    const std::int64_t common = std::gcd(over, under);
    const std::int64_t sign = under < 0 ? -1 : 1;
    return common == 0 ? Fraction{} : Fraction{sign * over / common, sign * under / common};
  }
  friend Fraction operator*(Fraction a, Fraction b) { return Fraction{a.over * b.over, a.under * b.under}.reduced(); }
  friend Fraction operator/(Fraction a, Fraction b) { return Fraction{a.over * b.under, a.under * b.over}.reduced(); }
  friend Fraction operator-(Fraction a, Fraction b) { return Fraction{a.over * b.under - b.over * a.under, a.under * b.under}.reduced(); }
};

using Equation = std::vector<Fraction>;  // a factor for each house, then the right side

// Takes the pivot out of every other equation.
bool eliminate(std::vector<Equation>& equations, std::size_t row, std::size_t column) {
  const Fraction pivot = equations[row][column];
  for (Fraction& value : equations[row]) value = value / pivot;
  for (std::size_t other = 0; other < equations.size(); ++other) {
    const Fraction factor = equations[other][column];
    if (other == row || factor.over == 0) continue;
    for (std::size_t i = 0; i < equations[other].size(); ++i) {
      equations[other][i] = equations[other][i] - factor * equations[row][i];
      if (!equations[other][i].is_small()) return false;
    }
  }
  return true;
}

// One solution, what is free being 0 (Gauss and Jordan).
std::optional<std::vector<Fraction>> solution_of(std::vector<Equation> equations, std::size_t unknowns) {
  std::vector<std::size_t> pivots;
  std::size_t row = 0;
  for (std::size_t column = 0; column < unknowns && row < equations.size(); ++column) {
    std::size_t found = row;
    while (found < equations.size() && equations[found][column].over == 0) ++found;
    if (found == equations.size()) continue;
    std::swap(equations[row], equations[found]);
    if (!eliminate(equations, row++, column)) return std::nullopt;
    pivots.push_back(column);
  }
  std::vector<Fraction> values(unknowns);
  for (std::size_t i = 0; i < equations.size(); ++i) {
    if (i < pivots.size()) values[pivots[i]] = equations[i].back();
    else if (equations[i].back().over != 0) return std::nullopt;
  }
  return values;
}

class Summer {
 public:
  Summer(const Shape& shape, const std::vector<CertificateFact>& facts) : shape_(shape) {
    for (std::size_t i = 0; i < facts.size(); ++i) {
      if (facts[i].kind == CertificateFact::Kind::kHouse) sources_.push_back({static_cast<int>(i), {{facts[i].house, 1}}});
      if (facts[i].kind == CertificateFact::Kind::kBalance) sources_.push_back({static_cast<int>(i), facts[i].weights});
      if (facts[i].kind == CertificateFact::Kind::kMarks && facts[i].digits.size() == 1) known_.add(facts[i].cell);
    }
  }

  std::optional<HouseSum> sum_for(const Row& row, int number) {
    std::map<int, int> factors;
    int digit = -1;
    for (const RowTerm& term : row.terms) {
      if (term.variable >= candidate_variables(shape_)) continue;
      if (digit >= 0 && term.variable % shape_.side() != digit) return std::nullopt;
      digit = term.variable % shape_.side();
      factors[term.variable / shape_.side()] = term.factor;
    }
    if (factors.size() < 3 || sources_.empty()) return std::nullopt;
    const auto [at, is_new] = weights_.try_emplace(factors);
    if (is_new) at->second = weights_for(factors);
    if (at->second.empty()) return std::nullopt;
    return made(at->second, Digit(digit), row, number);
  }

 private:
  // A multiplier for each source, and last what the row itself counts; empty when there are none.
  std::vector<int> weights_for(const std::map<int, int>& factors) {
    std::vector<Equation> equations;
    for (const Cell cell : shape_.all_cells() - known_) {
      Equation equation;
      for (const Source& source : sources_) {
        int weight = 0;
        for (const auto& [house, factor] : source.weights) weight += shape_.cells(house).has(cell) ? factor : 0;
        equation.push_back({weight, 1});
      }
      const auto wanted = factors.find(cell.index);
      equation.push_back({wanted == factors.end() ? 0 : wanted->second, 1});
      equations.push_back(std::move(equation));
    }
    const auto solved = solution_of(std::move(equations), sources_.size());
    if (!solved) return {};
    std::int64_t common = 1;
    for (const Fraction& value : *solved) common = std::lcm(common, value.under);
    std::vector<int> weights;
    for (const Fraction& value : *solved) weights.push_back(static_cast<int>(value.over * (common / value.under)));
    weights.push_back(static_cast<int>(common));
    return weights;
  }

  // The row with the sources taken away: what is left of it are options and cells that are known.
  HouseSum made(const std::vector<int>& multipliers, Digit digit, const Row& row, int number) {
    HouseSum sum{{{{RowName::Source::kDenial, 0, number}, multipliers.back()}}, {{}, multipliers.back() * row.least, row.is_exact}};
    std::map<int, int> factors;
    for (const RowTerm& term : row.terms) factors[term.variable] += multipliers.back() * term.factor;
    for (std::size_t i = 0; i < sources_.size(); ++i) {
      if (multipliers[i] == 0) continue;
      sum.uses.push_back({{RowName::Source::kFact, sources_[i].fact, digit.index}, -multipliers[i]});
      const Row source = weighed_row(shape_, sources_[i].weights, digit);
      sum.row.least -= multipliers[i] * source.least;
      for (const RowTerm& term : source.terms) factors[term.variable] -= multipliers[i] * term.factor;
    }
    for (const auto& [variable, factor] : factors) {
      if (factor != 0) sum.row.terms.push_back({variable, factor});
    }
    return sum;
  }

  struct Source {
    int fact;
    std::vector<Weight> weights;
  };

  const Shape& shape_;
  std::vector<Source> sources_;
  CellSet known_;
  std::map<std::map<int, int>, std::vector<int>> weights_;
};

}  // namespace

std::vector<HouseSum> house_sums(const Shape& shape, const std::vector<CertificateFact>& facts, const std::vector<Row>& rows) {
  std::vector<HouseSum> sums;
  Summer summer(shape, facts);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (auto sum = summer.sum_for(rows[i], static_cast<int>(i))) sums.push_back(std::move(*sum));
  }
  return sums;
}

}  // namespace cp
