// SPDX-License-Identifier: Apache-2.0
// A step: one deduction, what it changes and why.
#pragma once

#include <string_view>
#include <vector>

#include "grid/position.h"
#include "step/reason.h"

namespace cp {

struct Step {
  std::string_view technique;           // id from the catalogue, e.g. "hidden-single"; "balance" for balances. Static text.
  std::vector<Candidate> placements;    // digits this step puts into cells
  std::vector<Candidate> eliminations;  // candidates it strikes out; ordered, none twice, all present before the step
  Reason reason;
};

// Does to the position what the step says.
inline void apply(const Step& step, Position& position) {
  for (const Candidate& placement : step.placements) position.place(placement.cell, placement.digit);
  for (const Candidate& elimination : step.eliminations) position.eliminate(elimination);
}

// Receives steps as they are found. Returns false to stop the search.
class StepSink {
 public:
  virtual ~StepSink() = default;
  virtual bool take(Step step) = 0;
};

// Keeps every step.
class StepList final : public StepSink {
 public:
  bool take(Step step) override {
    steps.push_back(std::move(step));
    return true;
  }
  std::vector<Step> steps;
};

// Keeps the first step and stops.
class FirstStep final : public StepSink {
 public:
  bool take(Step step) override {
    found = true;
    first = std::move(step);
    return false;
  }
  bool found = false;
  Step first;
};

}  // namespace cp
