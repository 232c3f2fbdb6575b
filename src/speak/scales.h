// SPDX-License-Identifier: Apache-2.0
// A balance laid out on a position: who is in which pan, what cancels, what is known and what is open on each side.
// This is bookkeeping for words and pictures; it proves nothing (room verify does).
#pragma once

#include <array>
#include <vector>

#include "grid/position.h"
#include "step/balance_reason.h"

namespace cp {

// One side after cancelling. Counts include multiplicity: a cell of weight 2 counts twice.
struct ScalesSide {
  std::vector<House> houses;  // ordered; a house of weight 2 occurs twice
  CellSet cells;              // the remainder
  CellSet open;               // its cells without a digit
  CellSet repeated;           // its cells that count more than once
  int cell_count = 0;
  int open_count = 0;
  DigitCounts known{};        // copies of each digit that stand in the remainder already
};

struct Scales {
  ScalesSide left;
  ScalesSide right;
  CellSet cancelled;          // covered by both pans, weight 0
  std::array<int, kMaxCells> weight{};
  int surplus = 0;            // left houses minus right houses
  DigitCounts tally{};        // see balance_reason.h
  int slack = 0;              // open left cells beyond what the tally asks for

  // The open cells of a pan (of both for kBoth).
  [[nodiscard]] CellSet open(Pan pan) const;
  // Copies of the digit that the open cells of the pan hold when `shares` copies are shared.
  [[nodiscard]] int need(Pan pan, Digit digit, int shares) const;
};

Scales lay_out(const BalanceReason& reason, const Position& position);

}  // namespace cp
