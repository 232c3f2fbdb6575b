// SPDX-License-Identifier: Apache-2.0
// One try at a puzzle for a plan: a random solution, the givens that the plan asks for, more until the puzzle is proper,
// then away with those that the plan can do without.
#pragma once

#include <optional>

#include "base/rng.h"
#include "compose/ground.h"
#include "compose/way_in.h"
#include "exact/full_grid.h"

namespace cp {

struct Attempt {
  Stage stage = Stage::kTried;   // the last one reached
  std::optional<WayIn> way;      // for kMet
  Position puzzle;               // for kMet
  explicit Attempt(const Shape& shape) : puzzle(shape) {}
};

// Everything that a try needs and no try changes; tries of several threads may share one.
class Workshop {
 public:
  // Precondition: ground_of(plan) went well. The plan must outlive the workshop.
  Workshop(const Plan& plan, PlanGround ground) : examiner_(plan), ground_(std::move(ground)) {}

  // What comes of it depends on the state of `rng` alone.
  [[nodiscard]] Attempt attempt(Rng& rng) const;

  // The second half of a try: from a solution and the first givens. What the bounds forbid to these is not looked at.
  [[nodiscard]] Attempt finish(const FullGrid& solution, const CellSet& givens, const std::vector<Weight>& weights, Rng& rng) const;

  [[nodiscard]] const Examiner& examiner() const { return examiner_; }
  [[nodiscard]] const PlanGround& ground() const { return ground_; }

 private:
  Examiner examiner_;
  PlanGround ground_;
};

}  // namespace cp
