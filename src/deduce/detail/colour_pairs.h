// SPDX-License-Identifier: Apache-2.0
// The strong links of one digit fall into groups; in each, two colours go turn and turn about, and one of them is all
// true, the other all false. Used by the colourings.
#pragma once

#include <array>
#include <vector>

#include "deduce/detail/one_digit_links.h"

namespace cp::deduce {

// One group of places joined by strong links, in its two colours.
struct ColourPair {
  Digit digit;
  std::vector<StrongLink> links;  // never empty
  std::array<CellSet, 2> colour;  // colour[0] has the first cell

  // Everything the colours follow from when `start` is true, or false: the houses that fill one place after another.
  // Every place whose colour comes out true is placed by these lines, unless the start has been.
  [[nodiscard]] std::vector<Line> spread(Cell start, bool is_true) const;
};

// The groups of a digit, by first cell. A group that cannot be given two colours contradicts itself and is left out.
std::vector<ColourPair> colour_pairs(const Position& position, Digit digit);

// Either colour of the group is true. A step with a case for each, told through the group's first link; `extra` is
// what follows after the lines in the case that makes colour `with_extra` true.
Step by_colours(std::string_view technique, std::vector<Candidate> eliminations, const ColourPair& pair, std::size_t with_extra = 0, const std::vector<Line>& extra = {});

}  // namespace cp::deduce
