// SPDX-License-Identifier: Apache-2.0
// In which order? At each position the easiest step by a stated cost, to the solution or to an honest stop.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "balance/finder.h"
#include "base/result.h"
#include "path/measure.h"
#include "path/selection.h"

namespace cp {

struct PathStep {
  Position before;   // the position in which the step was found
  Step step;
  Measure measure;   // its parts and its cost
  int open = 0;      // different steps of this cost or less that were open here (counted up to kMostOpen); 0: not counted
  std::string text;  // the step in words
};

inline constexpr int kMostOpen = 20;

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
  std::vector<std::string> without = {};  // names of selection.h not to use
  std::vector<std::string> only = {};     // empty: everything
  int most_free_slack = 1;           // for balances
  int most_steps = 10'000;           // a guard, never reached by a real puzzle
  bool tells = true;                 // false: `open` and `text` of the steps are not filled in, which is most of the work
};

// Error kBadName when `without` or `only` name no technique. Where something costs less than the cheapest instance of a
// technique, that technique is not asked: the cost in the catalogue is a lower bound.
Result<Path> find_path(const Position& start, const PathOptions& options = {});

// The easiest step at one position; its `open` and `text` are not filled in. Empty when nothing fires.
std::optional<PathStep> easiest_step(const Position& position, const Selection& selection, int most_free_slack);

// What a whole path asks of a person.
struct PathMeasure {
  int steps = 0;
  int hardest = 0;              // the greatest cost of a step
  std::string_view technique;   // of the first step with that cost; empty when there is no step
  int effort = 0;               // the costs of all steps together
  int beyond_singles = 0;       // steps that are no singles
  int narrow = 0;               // of those, how many were the only step of their cost or less
  int open_tenths = 0;          // mean number of open steps, in tenths
};
PathMeasure measure(const Path& path);

// The best balance of the position as a step. Empty when none says anything.
std::optional<PathStep> balance_step(const Position& position, int most_free_slack);

// A found balance as a step.
Step to_step(const FoundBalance& found);

}  // namespace cp
