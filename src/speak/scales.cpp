// SPDX-License-Identifier: Apache-2.0
#include "speak/scales.h"

#include <algorithm>
#include <cstdlib>

namespace cp {

CellSet Scales::open(Pan pan) const {
  if (pan == Pan::kLeft) return left.open;
  if (pan == Pan::kRight) return right.open;
  return left.open | right.open;
}

int Scales::need(Pan pan, Digit digit, int shares) const {
  const int on_left = std::max(tally[digit.index], 0) + shares;
  const int on_right = std::max(-tally[digit.index], 0) + shares;
  if (pan == Pan::kLeft) return on_left;
  if (pan == Pan::kRight) return on_right;
  return on_left + on_right;
}

namespace {

void enter(ScalesSide& side, Cell cell, int times, const Position& position) {
  side.cells.add(cell);
  side.cell_count += times;
  if (times > 1) side.repeated.add(cell);
  if (const auto digit = position.digit_at(cell)) {
    side.known[digit->index] += times;
  } else {
    side.open.add(cell);
    side.open_count += times;
  }
}

}  // namespace

Scales lay_out(const BalanceReason& reason, const Position& position) {
  const Shape& shape = position.shape();
  Scales scales;
  CellSet covered;
  for (const Weight& weight : reason.weights) {
    ScalesSide& side = weight.weight > 0 ? scales.left : scales.right;
    side.houses.insert(side.houses.end(), static_cast<std::size_t>(std::abs(weight.weight)), weight.house);
    scales.surplus += weight.weight;
    covered |= shape.cells(weight.house);
    for (const Cell cell : shape.cells(weight.house)) scales.weight[cell.index] += weight.weight;
  }
  for (const Cell cell : covered) {
    const int weight = scales.weight[cell.index];
    if (weight == 0) scales.cancelled.add(cell);
    if (weight > 0) enter(scales.left, cell, weight, position);
    if (weight < 0) enter(scales.right, cell, -weight, position);
  }
  scales.slack = scales.left.open_count;
  for (const Digit digit : shape.digits()) {
    const int owed = scales.surplus + scales.right.known[digit.index] - scales.left.known[digit.index];
    scales.tally[digit.index] = owed;
    scales.slack -= std::max(owed, 0);
  }
  return scales;
}

}  // namespace cp
