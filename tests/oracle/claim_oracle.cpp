// SPDX-License-Identifier: Apache-2.0
#include "oracle/claim_oracle.h"

#include <algorithm>
#include <cadical.hpp>

namespace cp::oracle {

namespace {

using What = Saying::What;

constexpr const char* kDigits = "?123456789ABCDEFG";
constexpr int kSatisfiable = 10;

std::string cell_text(int cell, int side) { return "r" + std::to_string(cell / side + 1) + "c" + std::to_string(cell % side + 1); }

std::string cells_text(const std::vector<int>& cells, int side) {
  std::string text;
  for (const int cell : cells) text += (text.empty() ? "" : " ") + cell_text(cell, side);
  return text;
}

std::string digits_text(const std::vector<int>& digits) {
  std::string text;
  for (const int digit : digits) text += std::string(text.empty() ? "" : ",") + kDigits[digit];
  return text;
}

bool has(const std::vector<int>& digits, int digit) { return std::find(digits.begin(), digits.end(), digit) != digits.end(); }

int copies(const std::vector<int>& cells, const std::vector<int>& grid, int digit) {
  return static_cast<int>(std::count_if(cells.begin(), cells.end(), [&](int cell) { return grid[static_cast<std::size_t>(cell)] == digit; }));
}

bool same_digits(const Saying& saying, const std::vector<int>& grid) {
  for (int digit = 1; digit <= kMaxSide; ++digit) {
    const auto more = static_cast<int>(std::count(saying.digits.begin(), saying.digits.end(), digit));
    if (copies(saying.cells, grid, digit) != copies(saying.others, grid, digit) + more) return false;
  }
  return true;
}

int matching(const Saying& saying, const std::vector<int>& grid) {
  return static_cast<int>(std::count_if(saying.cells.begin(), saying.cells.end(), [&](int cell) { return has(saying.digits, grid[static_cast<std::size_t>(cell)]); }));
}

std::string joined_parts(const Saying& saying, int side, const std::string& word) {
  std::string text;
  for (const Saying& part : saying.parts) text += (text.empty() ? "(" : " " + word + " (") + text_of(part, side) + ")";
  return text;
}

}  // namespace

std::string text_of(const Saying& saying, int side) {
  const std::string cells = cells_text(saying.cells, side);
  const std::string digits = digits_text(saying.digits);
  const std::string count = std::to_string(saying.number) + " " + digits + " in " + cells;
  switch (saying.what) {
    case What::kIs: return cells + " = " + digits;
    case What::kIsNot: return cells + " != " + digits;
    case What::kIn: return cells + " in " + digits;
    case What::kNotIn: return cells + " not in " + digits;
    case What::kEqual: return cells + " = " + cells_text(saying.others, side);
    case What::kDifferent: return cells + " != " + cells_text(saying.others, side);
    case What::kHold: return cells + " hold " + digits;
    case What::kSurplus: return "{" + cells + "} = {" + cells_text(saying.others, side) + "}" + (digits.empty() ? "" : " + " + digits);
    case What::kExactly: return "exactly " + count;
    case What::kAtLeast: return "at least " + count;
    case What::kAtMost: return "at most " + count;
    case What::kIf: return "if (" + text_of(saying.parts[0], side) + ") then (" + text_of(saying.parts[1], side) + ")";
    case What::kAnd: return joined_parts(saying, side, "and");
    case What::kOr: return joined_parts(saying, side, "or");
    case What::kNot: return "not (" + text_of(saying.parts[0], side) + ")";
  }
  return {};
}

bool is_so(const Saying& saying, const std::vector<int>& grid) {
  const auto part = [&](std::size_t i) { return is_so(saying.parts[i], grid); };
  const auto digit_of = [&](int cell) { return grid[static_cast<std::size_t>(cell)]; };
  switch (saying.what) {
    case What::kIs:
    case What::kIn: return matching(saying, grid) == static_cast<int>(saying.cells.size());
    case What::kIsNot:
    case What::kNotIn: return matching(saying, grid) == 0;
    case What::kEqual: return digit_of(saying.cells[0]) == digit_of(saying.others[0]);
    case What::kDifferent: return digit_of(saying.cells[0]) != digit_of(saying.others[0]);
    case What::kHold:
    case What::kSurplus: return same_digits(saying, grid);
    case What::kExactly: return matching(saying, grid) == saying.number;
    case What::kAtLeast: return matching(saying, grid) >= saying.number;
    case What::kAtMost: return matching(saying, grid) <= saying.number;
    case What::kIf: return !part(0) || part(1);
    case What::kAnd: return std::all_of(saying.parts.begin(), saying.parts.end(), [&](const Saying& each) { return is_so(each, grid); });
    case What::kOr: return std::any_of(saying.parts.begin(), saying.parts.end(), [&](const Saying& each) { return is_so(each, grid); });
    case What::kNot: return !part(0);
  }
  return false;
}

ClaimOracle::ClaimOracle(const Shape& shape) : side_(shape.side()), next_(shape.cell_count() * side_ + 1), solver_(std::make_unique<CaDiCaL::Solver>()) {
  truth_ = fresh();
  clause({truth_});
  for (const Cell cell : shape.all_cells()) {
    std::vector<int> literals;
    for (int digit = 1; digit <= side_; ++digit) literals.push_back(literal(cell.index, digit));
    exactly_one(literals);
  }
}

ClaimOracle::ClaimOracle(const Position& position, const Rules& rules) : ClaimOracle(position.shape()) {
  const Shape& shape = position.shape();
  for (const Cell cell : shape.all_cells()) {
    if (!rules.marks && !position.is_placed(cell)) continue;
    for (const Digit digit : shape.digits() - position.candidates(cell)) clause({-literal(cell.index, digit.number())});
  }
  for (const int house : rules.houses) {
    for (int digit = 1; digit <= side_; ++digit) {
      std::vector<int> literals;
      for (const Cell cell : shape.cells(House(house))) literals.push_back(literal(cell.index, digit));
      exactly_one(literals);
    }
  }
  for (const Saying& saying : rules.granted) clause({meaning(saying)});
}

void ClaimOracle::exactly_one(const std::vector<int>& literals, int unless) {
  const std::vector<int> free = unless == 0 ? std::vector<int>{} : std::vector<int>{unless};
  std::vector<int> some = free;
  some.insert(some.end(), literals.begin(), literals.end());
  clause(some);
  for (std::size_t i = 0; i < literals.size(); ++i) {
    for (std::size_t j = i + 1; j < literals.size(); ++j) {
      std::vector<int> not_both = free;
      not_both.push_back(-literals[i]);
      not_both.push_back(-literals[j]);
      clause(not_both);
    }
  }
}

ClaimOracle::~ClaimOracle() = default;

void ClaimOracle::clause(const std::vector<int>& literals) {
  for (const int each : literals) solver_->add(each);
  solver_->add(0);
}

int ClaimOracle::all_of(const std::vector<int>& literals) {
  const int result = fresh();
  std::vector<int> back{result};
  for (const int each : literals) {
    clause({-result, each});
    back.push_back(-each);
  }
  clause(back);
  return result;
}

int ClaimOracle::any_of(const std::vector<int>& literals) {
  std::vector<int> negative;
  for (const int each : literals) negative.push_back(-each);
  return -all_of(negative);
}

std::vector<int> ClaimOracle::counts(const std::vector<int>& literals) {
  std::vector<int> before{truth_};
  for (const int each : literals) {
    std::vector<int> now{truth_};
    for (std::size_t k = 1; k <= before.size(); ++k) {
      const int with_this = all_of({before[k - 1], each});
      now.push_back(k < before.size() ? any_of({before[k], with_this}) : with_this);
    }
    before = std::move(now);
  }
  return before;
}

int ClaimOracle::in_set(const Saying& saying, bool inside) {
  std::vector<int> each_cell;
  for (const int cell : saying.cells) {
    std::vector<int> literals;
    for (const int digit : saying.digits) literals.push_back(literal(cell, digit));
    each_cell.push_back(inside ? any_of(literals) : -any_of(literals));
  }
  return all_of(each_cell);
}

int ClaimOracle::same_copies(const Saying& saying) {
  std::vector<int> each_digit;
  for (int digit = 1; digit <= side_; ++digit) {
    std::vector<int> left;
    std::vector<int> right;
    for (const int cell : saying.cells) left.push_back(literal(cell, digit));
    for (const int cell : saying.others) right.push_back(literal(cell, digit));
    for (auto more = std::count(saying.digits.begin(), saying.digits.end(), digit); more > 0; --more) right.push_back(truth_);
    const std::vector<int> left_counts = counts(left);
    const std::vector<int> right_counts = counts(right);
    const auto at = [this](const std::vector<int>& list, std::size_t k) { return k < list.size() ? list[k] : -truth_; };
    for (std::size_t k = 1; k < std::max(left_counts.size(), right_counts.size()); ++k) {
      const int both = all_of({at(left_counts, k), at(right_counts, k)});
      const int neither = all_of({-at(left_counts, k), -at(right_counts, k)});
      each_digit.push_back(any_of({both, neither}));
    }
  }
  return all_of(each_digit);
}

int ClaimOracle::count_between(const Saying& saying) {
  std::vector<int> literals;
  for (const int cell : saying.cells) {
    std::vector<int> one;
    for (const int digit : saying.digits) one.push_back(literal(cell, digit));
    literals.push_back(any_of(one));
  }
  const std::vector<int> list = counts(literals);
  const auto at_least = [&](int k) { return k < static_cast<int>(list.size()) ? list[static_cast<std::size_t>(k)] : -truth_; };
  if (saying.what == What::kAtLeast) return at_least(saying.number);
  if (saying.what == What::kAtMost) return -at_least(saying.number + 1);
  return all_of({at_least(saying.number), -at_least(saying.number + 1)});
}

int ClaimOracle::meaning(const Saying& saying) {
  std::vector<int> parts;
  for (const Saying& part : saying.parts) parts.push_back(meaning(part));
  switch (saying.what) {
    case What::kIs:
    case What::kIn: return in_set(saying, true);
    case What::kIsNot:
    case What::kNotIn: return in_set(saying, false);
    case What::kEqual:
    case What::kHold:
    case What::kSurplus: return same_copies(saying);
    case What::kDifferent: return -same_copies(saying);
    case What::kExactly:
    case What::kAtLeast:
    case What::kAtMost: return count_between(saying);
    case What::kIf: return any_of({-parts[0], parts[1]});
    case What::kAnd: return all_of(parts);
    case What::kOr: return any_of(parts);
    case What::kNot: return -parts[0];
  }
  return truth_;
}

bool ClaimOracle::can_be(const Saying& saying, bool so) {
  const int literal = meaning(saying);
  solver_->assume(so ? literal : -literal);
  return solver_->solve() == kSatisfiable;
}

bool ClaimOracle::can_be_anything() { return solver_->solve() == kSatisfiable; }

}  // namespace cp::oracle
