// SPDX-License-Identifier: Apache-2.0
// Does the idea move the puzzle where everything before it stops, and does the rest then follow?
#pragma once

#include <optional>

#include "balance/load.h"
#include "compose/plan.h"
#include "compose/technique_set.h"
#include "step/step.h"

namespace cp {

// How far a puzzle gets along the plan, in this order. What counts tries counts these.
enum class Stage : std::uint8_t {
  kTried,      // nothing is known of it yet
  kLaidOut,    // the givens that pattern and look ask for stand
  kProper,     // exactly one solution, no more givens than wanted
  kStuck,      // what comes before the idea does not solve it
  kNoOther,    // none of the excluded techniques says anything there
  kMoved,      // the idea does
  kMet,        // and the rest follows
};
inline constexpr std::size_t kStageCount = 7;

struct WayIn {
  explicit WayIn(const Position& start) : stuck(start), end(start) {}
  Stage stage = Stage::kProper;          // the last one reached
  Position stuck;                        // where what comes before stops (solved, if it does not)
  const Technique* other = nullptr;      // the excluded technique that speaks there, when stage is kStuck
  Step step;                             // the idea, from kMoved on
  std::vector<Weight> weights;           // of the balance
  int free_slack = 0;
  Position end;                          // where what comes after stops; the solution for kMet
};

// The sets of techniques of a plan, made once.
class Examiner {
 public:
  // Precondition: the plan was read by parse_plan().
  explicit Examiner(const Plan& plan) : plan_(plan), before_(plan.before), without_(plan.without), after_(plan.after) {}

  // Follows a proper puzzle along the plan. `weights`: the balance to look at; empty for an idea without named houses.
  // For a balance of a kind with no weights given, every balance of that kind is looked at, the best first.
  [[nodiscard]] WayIn follow(const Position& puzzle, const std::vector<Weight>& weights) const;

  [[nodiscard]] const Plan& plan() const { return plan_; }

 private:
  void try_balance(WayIn& way, const std::vector<Weight>& weights) const;
  void try_kind(WayIn& way) const;
  void try_found(WayIn& way) const;
  void try_technique(WayIn& way) const;
  bool try_step(WayIn& way, Step step, const std::vector<Weight>& weights, int free_slack) const;

  const Plan& plan_;
  TechniqueSet before_;
  TechniqueSet without_;
  TechniqueSet after_;
};

}  // namespace cp
