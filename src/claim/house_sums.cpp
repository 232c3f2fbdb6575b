// SPDX-License-Identifier: Apache-2.0
#include "claim/house_sums.h"

#include <algorithm>
#include <array>
#include <map>
#include <numeric>
#include <optional>
#include <utility>

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
  // Nearly all of them are whole numbers.
  friend Fraction operator*(Fraction a, Fraction b) { return a.under == 1 && b.under == 1 ? Fraction{a.over * b.over, 1} : Fraction{a.over * b.over, a.under * b.under}.reduced(); }
  friend Fraction operator/(Fraction a, Fraction b) { return a.under == 1 && b.under == 1 && b.over == 1 ? a : Fraction{a.over * b.under, a.under * b.over}.reduced(); }
  friend Fraction operator-(Fraction a, Fraction b) {
    return a.under == 1 && b.under == 1 ? Fraction{a.over - b.over, 1} : Fraction{a.over * b.under - b.over * a.under, a.under * b.under}.reduced();
  }
};

using Equation = std::vector<Fraction>;  // a factor for each house, then the right side

// Takes the pivot out of every other equation.
bool eliminate(std::vector<Equation>& equations, std::size_t row, std::size_t column) {
  const Fraction pivot = equations[row][column];
  for (Fraction& value : equations[row]) value = value / pivot;
  for (std::size_t other = 0; other < equations.size(); ++other) {
    const Fraction factor = equations[other][column];
    if (other == row || factor.over == 0) continue;
    for (std::size_t i = column; i < equations[other].size(); ++i) {
      if (equations[row][i].over == 0) continue;
      equations[other][i] = equations[other][i] - factor * equations[row][i];
      if (!equations[other][i].is_small()) return false;
    }
  }
  return true;
}

// All solutions: the first vector, and any multiples of the others added to it. Whole numbers; the last entry of each is the common
// denominator, which is 0 for the others.
using Solutions = std::vector<std::vector<int>>;

Solutions whole_numbers(const std::vector<std::vector<Fraction>>& vectors) {
  std::int64_t common = 1;
  for (const auto& vector : vectors) {
    for (const Fraction& value : vector) common = std::lcm(common, value.under);
  }
  Solutions solutions;
  for (const auto& vector : vectors) {
    std::vector<int>& whole = solutions.emplace_back();
    for (const Fraction& value : vector) whole.push_back(static_cast<int>(value.over * (common / value.under)));
    whole.push_back(solutions.size() == 1 ? static_cast<int>(common) : 0);
  }
  return solutions;
}

// Gauss and Jordan. Empty when there is none.
Solutions solutions_of(std::vector<Equation> equations, std::size_t unknowns) {
  std::vector<std::size_t> pivots;
  std::vector<std::size_t> free;
  std::size_t row = 0;
  for (std::size_t column = 0; column < unknowns; ++column) {
    std::size_t found = row;
    while (found < equations.size() && equations[found][column].over == 0) ++found;
    if (found == equations.size()) {
      free.push_back(column);
      continue;
    }
    std::swap(equations[row], equations[found]);
    if (!eliminate(equations, row++, column)) return {};
    pivots.push_back(column);
  }
  for (std::size_t i = pivots.size(); i < equations.size(); ++i) {
    if (equations[i].back().over != 0) return {};
  }
  std::vector<std::vector<Fraction>> vectors{std::vector<Fraction>(unknowns)};
  for (std::size_t i = 0; i < pivots.size(); ++i) vectors[0][pivots[i]] = equations[i].back();
  for (const std::size_t column : free) {
    std::vector<Fraction>& vector = vectors.emplace_back(unknowns);
    vector[column] = {1, 1};
    for (std::size_t i = 0; i < pivots.size(); ++i) vector[pivots[i]] = Fraction{} - equations[i][column];
  }
  return whole_numbers(vectors);
}

// The solution with the fewest multipliers that are not 0, among those whose free ones stay small.
class Sparsest {
 public:
  explicit Sparsest(const Solutions& solutions) : solutions_(solutions), best_(solutions.front()), fewest_(count(best_)) {
    const std::size_t directions = std::min(solutions.size() - 1, kMostDirections);
    try_from(1, directions, directions <= kManySteps ? 2 : 1, 0, solutions.front());
  }

  [[nodiscard]] const std::vector<int>& best() const { return best_; }

 private:
  static constexpr std::size_t kManySteps = 6;
  static constexpr std::size_t kMostDirections = 9;

  static int count(const std::vector<int>& multipliers) { return static_cast<int>(multipliers.size()) - static_cast<int>(std::count(multipliers.begin(), multipliers.end(), 0)); }

  // Each free multiplier that is not 0 counts by itself: `used` of them so far. The last entry counts one always.
  void try_from(std::size_t direction, std::size_t last, int steps, int used, const std::vector<int>& multipliers) {
    if (used + 1 >= fewest_) return;
    if (direction > last) {
      const int now = count(multipliers);
      if (now >= fewest_) return;
      fewest_ = now;
      best_ = multipliers;
      return;
    }
    for (int times = -steps; times <= steps; ++times) {
      std::vector<int> next = multipliers;
      for (std::size_t i = 0; i < next.size(); ++i) next[i] += times * solutions_[direction][i];
      try_from(direction + 1, last, steps, used + (times == 0 ? 0 : 1), next);
    }
  }

  const Solutions& solutions_;
  std::vector<int> best_;
  int fewest_;
};

class Summer {
 public:
  Summer(const Shape& shape, const std::vector<CertificateFact>& facts) : shape_(shape) {
    for (std::size_t i = 0; i < facts.size(); ++i) {
      if (facts[i].kind == CertificateFact::Kind::kHouse) sources_.push_back({static_cast<int>(i), {{facts[i].house, 1}}});
      if (facts[i].kind == CertificateFact::Kind::kBalance) sources_.push_back({static_cast<int>(i), facts[i].weights});
      if (facts[i].kind != CertificateFact::Kind::kMarks) continue;
      // Whether the cell holds this digit is known when it is the only one, and when it is not among the marks.
      for (const Digit digit : shape.digits()) {
        if (facts[i].digits.size() == 1 || !facts[i].digits.has(digit)) known_[digit.index].add(facts[i].cell);
      }
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
    const CellSet& known = known_[static_cast<std::size_t>(digit)];
    if (!goes_round(factors, known)) return std::nullopt;
    const auto [at, is_new] = weights_.try_emplace({digit, factors});
    if (is_new) at->second = weights_for(factors, known);
    if (at->second.empty()) return std::nullopt;
    return made(at->second, Digit(digit), row, number);
  }

 private:
  // A multiplier for each source, and last what the row itself counts; empty when there are none.
  std::vector<int> weights_for(const std::map<int, int>& factors, const CellSet& known) {
    std::vector<Equation> equations;
    for (const Cell cell : shape_.all_cells() - known) {
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
    const Solutions solutions = solutions_of(std::move(equations), sources_.size());
    return solutions.empty() ? std::vector<int>{} : Sparsest(solutions).best();
  }

  // Where two rows and two columns cross within a box, every sum of houses has as much on one diagonal as on the other. This turns
  // nearly all rows away before any equation is solved.
  [[nodiscard]] bool goes_round(const std::map<int, int>& factors, const CellSet& known) const {
    const auto factor = [&factors](Cell cell) {
      const auto found = factors.find(cell.index);
      return found == factors.end() ? 0 : found->second;
    };
    for (const auto& [index, own] : factors) {
      const Cell corner(index);
      if (known.has(corner)) continue;
      const CellSet& box = shape_.cells(shape_.box(shape_.box_of(corner)));
      for (const Cell across : box - known) {
        if (shape_.row_of(across) == shape_.row_of(corner) || shape_.column_of(across) == shape_.column_of(corner)) continue;
        const Cell beside = shape_.cell_at(shape_.row_of(corner), shape_.column_of(across));
        const Cell below = shape_.cell_at(shape_.row_of(across), shape_.column_of(corner));
        if (known.has(beside) || known.has(below)) continue;
        if (own + factor(across) != factor(beside) + factor(below)) return false;
      }
    }
    return true;
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
  std::array<CellSet, 16> known_;  // by digit: the cells of which it is known whether they hold it
  std::map<std::pair<int, std::map<int, int>>, std::vector<int>> weights_;  // by digit and factors
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
