// SPDX-License-Identifier: Apache-2.0
// How does a puzzle meet a plan? Point by point, with the shortcut where one bypasses the idea, and with changes that were
// tried and help.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compose/cleanness.h"
#include "compose/ground.h"
#include "path/path.h"

namespace cp {

// One point of the plan. Text is a sentence.
struct JudgedPoint {
  std::string name;    // "proper", "givens", "pattern", "symmetry", "look", "minimal", "before", "without", "idea", "after"
  bool is_met = false;
  bool is_asked = true;  // false: not looked at, because an earlier point failed
  std::string text;
};

// A step that bypasses the idea: it is open at a position on the way, and the puzzle goes on without the idea.
struct Shortcut {
  std::string technique;  // its id
  Position position;      // where it is
  std::string text;       // the step in words
};

struct Judgement {
  std::vector<JudgedPoint> points;
  std::optional<WayIn> way;         // when the puzzle is proper
  std::vector<Shortcut> shortcuts;  // cheapest first
  std::optional<Cleanness> clean;   // when every point is met

  [[nodiscard]] int met() const;
  [[nodiscard]] bool is_met() const { return met() == static_cast<int>(points.size()); }
};

// Judges a puzzle by the plan. `ground` belongs to the plan. The givens of the position are the puzzle.
Judgement judge(const Examiner& examiner, const PlanGround& ground, const Position& puzzle);

// The points alone, quickly, for a proper puzzle whose way in is known.
Judgement judge_points(const Examiner& examiner, const PlanGround& ground, const Position& puzzle, const WayIn& way);

}  // namespace cp
