// SPDX-License-Identifier: Apache-2.0
// Small changes to a puzzle, each tried out under a plan: a given moved, dropped or added.
#pragma once

#include "compose/judge.h"
#include "exact/full_grid.h"

namespace cp {

struct Change {
  CellSet dropped;
  CellSet added;
};

struct Improvement {
  Change change;
  Position puzzle;
  int met = 0;              // points of the plan that the puzzle then meets
  int asked = 0;            // of so many
  std::optional<Cleanness> clean;  // when all are met
};

struct ImproveOptions {
  std::size_t limit = 5;
  int most_changes = 2;     // givens dropped and added together, 1 or 2 (2 includes moving one)
};

struct Improvements {
  Judgement before;
  std::vector<Improvement> best;  // better than the puzzle itself, best first: more points, then a smaller key, then fewer changes
  int tried = 0;                  // changes that left a proper puzzle and were judged
};

// Givens are added with the digits of the puzzle's solution. To a puzzle with several solutions one given is added at a time,
// with every digit it can have; from a puzzle without any, givens are only taken away.
Improvements improve(const Examiner& examiner, const PlanGround& ground, const Position& puzzle, const ImproveOptions& options);

}  // namespace cp
