// SPDX-License-Identifier: Apache-2.0
// A sink that has had enough after a number of steps.
#pragma once

#include <vector>

#include "step/step.h"

namespace cp {

class SomeSteps final : public StepSink {
 public:
  // Precondition: most >= 1.
  explicit SomeSteps(std::size_t most) : most_(most) {}
  bool take(Step step) override {
    steps.push_back(std::move(step));
    return steps.size() < most_;
  }
  std::vector<Step> steps;

 private:
  std::size_t most_;
};

}  // namespace cp
