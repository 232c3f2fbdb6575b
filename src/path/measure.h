// SPDX-License-Identifier: Apache-2.0
// How hard is a step, and a path? Our own measure, shown in parts; docs/measure.md explains it and compares it with
// published findings. Whole numbers only, made from the reason of the step and the catalogue, never from the solution.
#pragma once

#include "balance/load.h"
#include "deduce/technique.h"
#include "step/step.h"

namespace cp {

// What a person has to look at and hold in the head for one step.
struct Measure {
  int facts = 0;    // exactly-one facts that the reason uses, each counted once
  int houses = 0;   // houses among them
  int cells = 0;    // open cells in which those facts have candidates
  int digits = 0;   // digits that are followed
  int lines = 0;    // lines of the argument, over all its cases; 0 for a single sum
  int cases = 0;    // cases to compare; 0 when nothing is split
  bool supposes = false;      // something is supposed, or cases are compared
  bool needs_unique = false;  // it leans on the puzzle having one solution
  int cost = 0;     // the parts on one scale (catalogue.def); never below the technique's own cost
};

// `technique` is null for balances: their parts come from the pans, their cost is balance_cost().
Measure measure(const Step& step, const Position& before, const Technique* technique);

// Cost of a balance on the scale of deduce/catalogue.def: more than any subset or fish, then by what has to be kept in
// mind. 120 for setting up the pans and counting, 3 for each part of the load.
inline int balance_cost(const Load& load) { return 120 + 3 * load.total(); }
// No balance costs less: one house a pan, a cell each, a lemma.
inline constexpr int kLeastBalanceCost = 120 + 3 * 5;

}  // namespace cp
