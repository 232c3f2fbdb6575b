// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_colours.h"

namespace cp::oracle {

std::set<Colours> plain_colours(const Position& position, Digit digit) {
  std::set<Colours> groups;
  for (const Cell start : places_in_grid(position, digit)) {
    Colours group{{start}, {}};
    for (std::size_t size = 0; size != group.alike.size() + group.opposite.size();) {
      size = group.alike.size() + group.opposite.size();
      for (const Cell cell : group.alike) group.opposite.merge(partners(position, digit, cell));
      for (const Cell cell : group.opposite) group.alike.merge(partners(position, digit, cell));
    }
    const bool is_possible = minus(group.alike, group.opposite) == group.alike;
    if (is_possible && !group.opposite.empty()) groups.insert(group);
  }
  return groups;
}

bool is_in_sight(const Position& position, const std::set<Cell>& ones, const std::set<Cell>& others) {
  for (const Cell one : ones) {
    for (const Cell other : others) {
      if (see_each_other(position, one, other)) return true;
    }
  }
  return false;
}

}  // namespace cp::oracle
