// SPDX-License-Identifier: Apache-2.0
// The checker must refuse what does not follow: every way to bend a reason that is tried here is caught, or leaves a
// reason that is still right.
#include "verify/step_check.h"

#include <gtest/gtest.h>

#include "balance/finder.h"
#include "exact/backbone.h"
#include "support/random_balances.h"

namespace cp {
namespace {

struct Sample {
  Position position;
  Step step;
};

std::vector<Sample> balance_samples(int positions) {
  std::vector<Sample> samples;
  std::uint64_t seed = 2000;
  for (int i = 0; i < positions; ++i) {
    const Position position = support::stuck_position(standard_shape(), seed);
    for (const FoundBalance& found : find_balances(position, {}).balances) {
      samples.push_back({position, Step{"balance", {}, found.result.eliminations, found.result.reason}});
    }
  }
  return samples;
}

TEST(StepCheck, RefusesAnEliminationThatDoesNotFollow) {
  int refused = 0;
  for (const Sample& sample : balance_samples(8)) {
    ASSERT_TRUE(check_step(sample.position, sample.step).holds);
    const Backbone truth = find_backbone(sample.position);
    for (const Cell cell : sample.position.open()) {
      for (const Digit digit : truth.possible[cell.index]) {
        Step wrong = sample.step;
        wrong.eliminations.push_back({cell, digit});
        EXPECT_FALSE(check_step(sample.position, wrong).holds);
        ++refused;
      }
    }
  }
  EXPECT_GT(refused, 1000);
}

// Whatever is changed in the reason, a step that strikes out a true candidate is never accepted.
TEST(StepCheck, NeverAcceptsAFalseEliminationWithABentReason) {
  Rng rng(7);
  int bent = 0;
  int refused = 0;
  for (const Sample& sample : balance_samples(8)) {
    const Backbone truth = find_backbone(sample.position);
    for (int i = 0; i < 60; ++i) {
      Step step = sample.step;
      auto& reason = std::get<BalanceReason>(step.reason);
      switch (rng.below(8)) {
        case 0: reason.weights[rng.below(static_cast<std::uint32_t>(reason.weights.size()))].weight *= -1; break;
        case 1: reason.weights.pop_back(); break;
        case 2: reason.level = 1 + static_cast<int>(rng.below(5)); break;
        case 3: reason.tally[rng.below(9)] += 1; break;
        case 4: if (!reason.cases.empty()) reason.cases.pop_back(); break;
        case 5: for (auto& entry : reason.cases) entry.is_impossible = true; break;
        case 6: for (auto& entry : reason.cases) if (!entry.lemmas.empty()) entry.lemmas.erase(entry.lemmas.begin()); break;
        default: for (auto& entry : reason.cases) for (auto& lemma : entry.lemmas) lemma.pan = static_cast<Pan>(rng.below(3)); break;
      }
      const Cell cell(static_cast<int>(rng.below(81)));
      if (rng.below(2) == 0 && !sample.position.is_placed(cell)) {
        const Candidate lie{cell, sample.position.candidates(cell).lowest()};
        step.eliminations.push_back(lie);
        if (!reason.cases.empty() && !reason.cases[0].lemmas.empty()) reason.cases[0].lemmas[0].removed.push_back(lie);
      }
      ++bent;
      if (!check_step(sample.position, step).holds) {
        ++refused;
        continue;
      }
      for (const Candidate& elimination : step.eliminations) EXPECT_TRUE(truth.is_never(elimination));
    }
  }
  EXPECT_GT(refused, bent / 2);
}

TEST(StepCheck, RefusesStepsThatChangeNothing) {
  const Position position(standard_shape());
  EXPECT_FALSE(check_step(position, Step{"balance", {}, {}, BalanceReason{}}).holds);
  EXPECT_FALSE(check_step(position, Step{"naked-single", {{Cell(0), Digit(0)}}, {}, LoneReason{Constraint::of(Cell(0))}}).holds);
}

TEST(StepCheck, RefusesOverflow) {
  Position position(standard_shape());
  LinearReason reason;
  for (int i = 0; i < 3; ++i) reason.terms.push_back({Constraint::of(House(0), Digit(0)), 2'000'000'000});
  for (int i = 0; i < 40; ++i) reason.terms.insert(reason.terms.end(), reason.terms.begin(), reason.terms.begin() + 3);
  const Step step{"x-wing", {}, {{Cell(0), Digit(0)}}, reason};
  EXPECT_FALSE(check_step(position, step).holds);
}

}  // namespace
}  // namespace cp
