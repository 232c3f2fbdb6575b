// SPDX-License-Identifier: Apache-2.0
#include "oracle/plain_search.h"

namespace cp::oracle {

namespace {

using Domains = std::vector<DigitSet>;

void extend(const Shape& shape, const Domains& domains, CellSet open, std::size_t limit, std::vector<std::vector<Digit>>& found) {
  if (found.size() >= limit) return;
  if (open.is_empty()) {
    std::vector<Digit> grid;
    for (const DigitSet domain : domains) grid.push_back(domain.lowest());
    found.push_back(grid);
    return;
  }
  Cell smallest = open.first();
  for (const Cell cell : open) {
    if (domains[cell.index].size() < domains[smallest.index].size()) smallest = cell;
  }
  open.remove(smallest);
  for (const Digit digit : domains[smallest.index]) {
    Domains narrowed = domains;
    narrowed[smallest.index] = DigitSet::of(digit);
    for (const Cell peer : shape.peers(smallest)) narrowed[peer.index].remove(digit);
    extend(shape, narrowed, open, limit, found);
  }
}

}  // namespace

std::vector<std::vector<Digit>> plain_solutions(const Position& position, std::size_t limit) {
  Domains domains;
  for (const Cell cell : position.shape().all_cells()) domains.push_back(position.candidates(cell));
  std::vector<std::vector<Digit>> found;
  extend(position.shape(), domains, position.shape().all_cells(), limit, found);
  return found;
}

}  // namespace cp::oracle
