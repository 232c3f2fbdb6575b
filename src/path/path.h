// SPDX-License-Identifier: Apache-2.0
// In which order? At each position the easiest step by a stated cost, to the solution or to an honest stop.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "balance/finder.h"
#include "base/result.h"
#include "deduce/technique.h"

namespace cp {

// The id under which balances are switched off and named in steps.
inline constexpr std::string_view kBalanceId = "balance";

// Cost of a balance on the scale of deduce/catalogue.def: more than any subset or fish, then by what has to be kept in
// mind. 120 for setting up the pans and counting, 3 for each part of the load.
inline int balance_cost(const Load& load) { return 120 + 3 * load.total(); }

struct PathStep {
  Position before;   // the position in which the step was found
  Step step;
  int cost = 0;      // technique cost, or balance_cost
  std::string text;  // the step in words
};

enum class PathEnd {
  kSolved,      // every cell is placed
  kStuck,       // no allowed technique says anything
  kImpossible,  // the position shows that it has no solution
};

struct Path {
  explicit Path(Position start) : end_position(std::move(start)) {}
  std::vector<PathStep> steps;
  PathEnd end = PathEnd::kStuck;
  Position end_position;
};

struct PathOptions {
  std::vector<std::string> without;  // ids of techniques not to use; kBalanceId switches balances off
  int most_free_slack = 1;           // for balances
  int most_steps = 10'000;           // a guard, never reached by a real puzzle
};

// Error kBadName when `without` names no technique.
Result<Path> find_path(const Position& start, const PathOptions& options = {});

// The best balance of the position as a step. Empty when none says anything.
std::optional<PathStep> balance_step(const Position& position, int most_free_slack);

// A found balance as a step.
Step to_step(const FoundBalance& found);

}  // namespace cp
