// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/locked_pattern.h"

#include <numeric>
#include <utility>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/arguments.h"

namespace cp::deduce {

namespace {

CellSet struck_in(const Position& position, const Need& need, House house) { return position.places(house, need.digit) - need.cells; }

// The houses that strike something out; if none does, the first that can cover the need. Empty: there is no house.
std::vector<House> covers_of(const Position& position, const Need& need) {
  std::vector<House> houses = houses_around(position.shape(), need.cells);
  std::vector<House> striking = houses;
  std::erase_if(striking, [&](House house) { return struck_in(position, need, house).is_empty(); });
  if (!striking.empty()) return striking;
  if (houses.size() > 1) houses.erase(houses.begin() + 1, houses.end());
  return houses;
}

}  // namespace

Step locked_pattern_step(std::string_view technique, const Position& position, const std::vector<Cell>& cells, const std::vector<Need>& needs) {
  Step step{technique, {}, {}, LinearReason{}};
  std::vector<std::vector<House>> covers;
  int scale = 1;  // where two or three houses cover one need, each takes its share
  for (const Need& need : needs) {
    covers.push_back(covers_of(position, need));
    if (covers.back().empty()) return step;
    scale = std::lcm(scale, static_cast<int>(covers.back().size()));
  }
  SumOfSets sum;
  for (const Cell cell : cells) sum.add_base(Constraint::of(cell), scale);
  for (std::size_t i = 0; i < needs.size(); ++i) {
    for (const House house : covers[i]) {
      sum.add_cover(house, needs[i].digit, scale / static_cast<int>(covers[i].size()));
      for (const Cell cell : struck_in(position, needs[i], house)) step.eliminations.push_back({cell, needs[i].digit});
    }
  }
  tidy(step.eliminations);
  step.reason = LinearReason{sum.terms()};
  return step;
}

}  // namespace cp::deduce
