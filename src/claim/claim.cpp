// SPDX-License-Identifier: Apache-2.0
#include "claim/claim.h"

#include <algorithm>

namespace cp {

namespace {

bool has_same_digits(const Claim& claim, const FullGrid& grid) {
  DigitCounts counts = claim.surplus;
  for (const CellCount& item : claim.right) counts[grid.at(item.cell).index] += item.times;
  for (const CellCount& item : claim.left) counts[grid.at(item.cell).index] -= item.times;
  return std::all_of(counts.begin(), counts.end(), [](int count) { return count == 0; });
}

bool has_count(const Claim& claim, const FullGrid& grid) {
  int count = 0;
  for (const CellCount& item : claim.left) count += claim.digits.has(grid.at(item.cell)) ? item.times : 0;
  return claim.least <= count && count <= claim.most;
}

}  // namespace

CellSet cells_of(const CellGroup& group) {
  CellSet cells;
  for (const CellCount& item : group) cells.add(item.cell);
  return cells;
}

int size_of(const CellGroup& group) {
  int size = 0;
  for (const CellCount& item : group) size += item.times;
  return size;
}

bool holds_in(const Claim& claim, const FullGrid& grid) {
  const auto holds = [&grid](const Claim& part) { return holds_in(part, grid); };
  switch (claim.kind) {
    case Claim::Kind::kAll: return std::all_of(claim.parts.begin(), claim.parts.end(), holds);
    case Claim::Kind::kAny: return std::any_of(claim.parts.begin(), claim.parts.end(), holds);
    case Claim::Kind::kNot: return !holds(claim.parts.front());
    case Claim::Kind::kValues:
      return std::all_of(claim.left.begin(), claim.left.end(), [&](const CellCount& item) { return claim.digits.has(grid.at(item.cell)); });
    case Claim::Kind::kSame: return has_same_digits(claim, grid);
    case Claim::Kind::kCount: return has_count(claim, grid);
  }
  return false;
}

CellSet mentioned(const Claim& claim) {
  CellSet cells = cells_of(claim.left) | cells_of(claim.right);
  for (const Claim& part : claim.parts) cells |= mentioned(part);
  return cells;
}

}  // namespace cp
