// SPDX-License-Identifier: Apache-2.0
// How clean a lesson does a composed puzzle make? Counted where the idea comes in; docs/formats/compose.md explains the parts.
#pragma once

#include <functional>

#include "compose/way_in.h"

namespace cp {

struct Cleanness {
  int load = 0;                // of the planned balance (balance/load.h); for a technique its measure
  int other_balances = 0;      // other balances that say something there and ask no more of a person (up to kMostOthers)
  int other_techniques = 0;    // techniques outside `before` that say something there and cost no more than the idea
  bool is_irreducible = true;  // the balance is not two smaller ones side by side
  int tail_steps = 0;          // steps after the idea that are no singles
  int tail_hardest = 0;        // cost of the hardest of all steps after it
  int hint = 0;                // how clearly the layout points at the balance, 0..6
  int superfluous = 0;         // givens that the puzzle could do without

  // Smaller is cleaner: load + 5 for every other way in + 20 for a balance that falls apart + 2 for every step of the tail
  // that is no single + 1 for a superfluous given - 3 for each part of the hint.
  [[nodiscard]] int key() const {
    return load + 5 * (other_balances + other_techniques) + (is_irreducible ? 0 : 20) + 2 * tail_steps + superfluous - 3 * hint;
  }
};

inline constexpr int kMostOthers = 9;

// Precondition: way.stage is kMet.
Cleanness cleanness_of(const Plan& plan, const Position& puzzle, const WayIn& way);

// Do these houses fall into two parts with remainders that have no open cell in common and cancel nothing of one another,
// each a balance with slack of its own? Only parts made of the same houses are looked for.
bool falls_apart(const Position& position, const Weighing& whole);

// What the idea costs where it comes in (path/measure.h); the least that a balance costs when it did not.
int cost_of_idea(const Plan& plan, const WayIn& way);

// Techniques outside `before`, the idea aside, that say something where it comes in and cost no more than `most`; the
// excluded technique that speaks there, whatever it costs. Cheapest technique first, until `visit` says false.
void for_each_way_round(const Plan& plan, const WayIn& way, int most, const std::function<bool(const Technique& technique, const Step& step)>& visit);

}  // namespace cp
