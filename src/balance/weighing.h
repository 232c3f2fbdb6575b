// SPDX-License-Identifier: Apache-2.0
// What must weigh the same? A weighing is a balance put on a position: remainders, tally, slack.
// Theory: docs/adr/0002-balances.md and the comment in step/balance_reason.h.
#pragma once

#include <vector>

#include "base/result.h"
#include "grid/position.h"
#include "step/balance_reason.h"

namespace cp {

struct Weighing {
  std::vector<Weight> weights;  // ordered by house, none 0, each house once
  int surplus = 0;              // N = sum of the weights
  CellSet left;                 // remainders: all cells with positive / negative weight, known ones among them
  CellSet right;
  CellSet cancelled;            // cells that both pans cover equally often (weight 0, but touched)
  CellSet open_left;            // open cells of the remainders
  CellSet open_right;
  // layers[k]: open cells of the remainders that count more than k+1 times. Empty when nothing counts double.
  std::vector<CellSet> layers;
  DigitCounts known_left{};     // copies of each placed digit in the remainders, with multiplicity
  DigitCounts known_right{};
  DigitCounts tally{};          // surplus + known_right - known_left
  int slack = 0;                // units(open_left) - sum of positive tallies; negative: the position is impossible

  // Cells counted with their multiplicity.
  [[nodiscard]] int units(const CellSet& cells) const {
    int total = cells.size();
    for (const CellSet& layer : layers) total += (cells & layer).size();
    return total;
  }
  // How often a cell of the remainders counts.
  [[nodiscard]] int multiplicity(Cell cell) const;
  // Copies that the tally alone asks for on one side.
  [[nodiscard]] int asked_left(Digit digit) const { return tally[digit.index] > 0 ? tally[digit.index] : 0; }
  [[nodiscard]] int asked_right(Digit digit) const { return tally[digit.index] < 0 ? -tally[digit.index] : 0; }
};

// Puts the weights on the position. Weights for the same house are added up; zero sums drop out.
// The pans are kept as given (no swapping to make the surplus positive).
Weighing weigh(const Position& position, const std::vector<Weight>& weights);

inline constexpr std::string_view kEmptyPan = "none";

// Reads a pan as a person types it: "r1,r2,3*c4" (any of , ; space + between the houses; a number and '*' before a house
// counts it that often); nothing or kEmptyPan for no house. Errors: kBadName, kBadArgument, with the place in the text.
Result<std::vector<Weight>> parse_pan(const Shape& shape, std::string_view text, bool is_left);

// Both pans. One of them may be empty: kBadArgument when both are.
Result<std::vector<Weight>> parse_pans(const Shape& shape, std::string_view left, std::string_view right);

// The houses of one pan as text: "r1,r2,3*c4".
std::string pan_text(const Shape& shape, const std::vector<Weight>& weights, bool left);

}  // namespace cp
