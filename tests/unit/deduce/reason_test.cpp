// SPDX-License-Identifier: Apache-2.0
// The worked example of docs/formats/step.md, and reasons that must be refused.
#include <gtest/gtest.h>

#include "deduce/technique.h"
#include "oracle/reason_replay.h"

namespace cp {
namespace {

// Row 1 with 3 and 7 in r1c1 and r1c5, all else open.
Position pair_position() {
  Position position(standard_shape());
  for (const int index : {0, 4}) {
    for (const Digit digit : position.candidates(Cell(index))) {
      if (digit.number() != 3 && digit.number() != 7) position.eliminate({Cell(index), digit});
    }
  }
  return position;
}

Step pair_step() {
  FirstStep first;
  (*find_technique("naked-pair"))->find(pair_position(), first);
  return first.first;
}

TEST(LinearReason, IsTheOneOfTheManual) {
  const Step step = pair_step();
  const auto* reason = std::get_if<LinearReason>(&step.reason);
  ASSERT_NE(reason, nullptr);
  const House row = standard_shape().row(0);
  const std::vector<std::pair<Constraint, int>> wanted = {
      {Constraint::of(Cell(0)), -1}, {Constraint::of(Cell(4)), -1}, {Constraint::of(row, Digit(2)), 1}, {Constraint::of(row, Digit(6)), 1}};
  ASSERT_EQ(reason->terms.size(), wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    EXPECT_EQ(reason->terms[i].constraint, wanted[i].first);
    EXPECT_EQ(reason->terms[i].multiplier, wanted[i].second);
  }
  EXPECT_EQ(oracle::replay_fault(pair_position(), step), "");
}

TEST(LinearReason, IsRefusedWhenACellHasAThirdCandidate) {
  Position position(standard_shape());
  EXPECT_EQ(oracle::replay_fault(position, pair_step()), "an open candidate has a negative coefficient");
}

TEST(LinearReason, IsRefusedWhenTheStepClaimsLessOrMore) {
  Step step = pair_step();
  step.eliminations.pop_back();
  EXPECT_EQ(oracle::replay_fault(pair_position(), step), "the reason strikes out other candidates than the step");
  step = pair_step();
  step.eliminations.push_back({Cell(9), Digit(0)});
  EXPECT_EQ(oracle::replay_fault(pair_position(), step), "the reason strikes out other candidates than the step");
  step = pair_step();
  std::get_if<LinearReason>(&step.reason)->terms.pop_back();
  EXPECT_NE(oracle::replay_fault(pair_position(), step), "");
}

TEST(LoneReason, NeedsExactlyOneCandidate) {
  const Position position = pair_position();
  const Step step{"naked-single", {{Cell(0), Digit(2)}}, {}, LoneReason{Constraint::of(Cell(0))}};
  EXPECT_EQ(oracle::replay_fault(position, step), "the fact has more or fewer than one candidate left");
  Position single = position;
  single.eliminate({Cell(0), Digit(6)});
  EXPECT_EQ(oracle::replay_fault(single, step), "");
}

}  // namespace
}  // namespace cp
