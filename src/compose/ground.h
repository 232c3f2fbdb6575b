// SPDX-License-Identifier: Apache-2.0
// Where may the givens of a plan stand? The drawn pattern, the symmetry and the look, made into sets of cells.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "base/rng.h"
#include "compose/plan.h"

namespace cp {

// How many of these cells may be givens.
struct GivenBounds {
  CellSet cells;
  int least = 0;
  int most = 0;

  [[nodiscard]] bool is_met(const CellSet& givens) const {
    const int count = (cells & givens).size();
    return least <= count && count <= most;
  }
};

// What a plan says about cells, whatever the houses are.
struct PlanGround {
  CellSet may;                         // all cells that may hold a given, those that must among them
  CellSet must;
  std::vector<Candidate> fixed;        // givens whose digit the plan names; their cells are in `must`
  std::vector<CellSet> orbit_of;       // by cell: the cells that the symmetries put it on, itself among them
};

// Error kBadArgument when pattern, symmetry, look and number of givens can not all be met.
Result<PlanGround> ground_of(const Plan& plan);

// The bounds that the look sets, with these houses in the pans (no weights: looks at regions of a balance are left out).
std::vector<GivenBounds> bounds_of(const Plan& plan, const std::vector<Weight>& weights);

// The houses of the plan's balance; those of a kind are picked at random, never two of a pan with a common cell. Empty
// only when there are none (too many houses) or the idea is no balance of named houses or of a kind.
std::optional<std::vector<Weight>> pick_houses(const PlannedIdea& idea, Rng& rng);

// Every choice of houses that pick_houses() may come to, in a fixed order; for an idea of a kind.
std::vector<std::vector<Weight>> all_houses(const PlannedIdea& idea);

// Does a pattern of givens look the same after each of the symmetries?
bool has_symmetry(const CellSet& cells, const std::vector<Symmetry>& symmetries);

}  // namespace cp
