// SPDX-License-Identifier: Apache-2.0
// Two colours for the places of a digit that strong links join; shared by the twins of the colourings.
#pragma once

#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

// Places that are all true or all false, and those that are then all the other way.
struct Colours {
  std::set<Cell> alike;
  std::set<Cell> opposite;

  friend auto operator<=>(const Colours&, const Colours&) = default;
};

// Every group of the digit, both ways round; those where a place would be its own opposite are left out.
std::set<Colours> plain_colours(const Position& position, Digit digit);

// Does some cell of the one set see some cell of the other?
bool is_in_sight(const Position& position, const std::set<Cell>& ones, const std::set<Cell>& others);

}  // namespace cp::oracle
