// SPDX-License-Identifier: Apache-2.0
#include "claim/vocabulary.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace cp {

namespace {

constexpr std::array<std::string_view, 39> kReserved = {"if",  "then", "and",   "or",     "not",  "is",    "in",      "hold",     "holds",  "exactly", "at",       "least",  "most",
                                                        "no",  "a",    "an",    "one",    "two",  "three", "four",    "five",     "six",    "seven",   "eight",    "nine",   "open",
                                                        "let", "left", "right", "footing", "rules", "position", "digits", "earlier", "balance", "puzzle", "without", "claim", "s"};

}  // namespace

CellGroup remainder_of(const Shape& shape, const std::vector<Weight>& weights, bool left) {
  std::array<int, kMaxCells> weight_of{};
  for (const auto& [house, weight] : weights) {
    for (const Cell cell : shape.cells(house)) weight_of[cell.index] += weight;
  }
  CellGroup group;
  for (const Cell cell : shape.all_cells()) {
    const int weight = weight_of[cell.index];
    if (left ? weight > 0 : weight < 0) group.push_back({cell, std::abs(weight)});
  }
  return group;
}

const NamedBalance* Vocabulary::balance(std::string_view name) const {
  const auto found = std::find_if(balances.begin(), balances.end(), [name](const NamedBalance& balance) { return balance.name == name; });
  return found == balances.end() ? nullptr : &*found;
}

bool is_free_name(const Shape& shape, const std::string& name) {
  if (std::find(kReserved.begin(), kReserved.end(), name) != kReserved.end()) return false;
  if (shape.parse_cell(name) || shape.parse_house(name)) return false;
  if (name.size() == 1 && shape.side() > 9 && name[0] >= 'a' && name[0] <= 'g') return false;
  const bool is_like_a_house = name.size() > 1 && (name[0] == 'r' || name[0] == 'c' || name[0] == 'b') && name[1] >= '0' && name[1] <= '9';
  return !is_like_a_house;
}

}  // namespace cp
