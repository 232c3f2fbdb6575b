// SPDX-License-Identifier: Apache-2.0
// The commands about plans and composed puzzles, as in commands.h; answers: docs/formats/compose.md.
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "api/answer.h"

namespace cp::api {

// Can a plan of a composition be read, and do its parts go together?
struct PlanRequest {
  std::string plan;  // docs/formats/plan.md
};
Answer plan_check(const PlanRequest& request);

// Puzzles that meet a plan, the cleanest lesson first. Open when fewer than wanted were found within the tries.
struct ComposeRequest {
  std::string plan;
  std::optional<int> seed = {};  // empty: that of the state, else 1
  int count = 10;       // how many to give
  int of = 0;           // how many to find before the best are chosen; 0: as many as are given
  int most_tries = 0;   // stop after so many, counted from the first (rounded up to whole blocks); 0: never
  int threads = 1;
  std::string state = {};  // goes on from where an earlier answer stopped
};
struct ComposeNews {
  std::uint64_t tries = 0;
  std::array<std::uint64_t, 7> reached{};  // by compose/way_in.h, Stage
  std::size_t found = 0;
};
// Hears how the search is going. False ends it, with what was found. `state` writes the state down, for a long search to
// keep.
class ComposeObserver {
 public:
  virtual ~ComposeObserver() = default;
  virtual bool goes_on(const ComposeNews& news, const std::function<std::string()>& state) = 0;
};
Answer compose(const ComposeRequest& request, ComposeObserver* observer = nullptr);

// How does a puzzle meet a plan, what bypasses the idea, and which change of a given helps? Refuted when it does not meet it.
struct JudgeRequest {
  std::string puzzle;  // its givens are judged
  std::string plan;
  int limit = 5;         // how many changes to give; 0 (judge only): none are tried
  int most_changes = 2;  // givens dropped and added together: 1, or 2 (2 includes moving one)
};
Answer judge(const JudgeRequest& request);
// The changes alone. Open when none helps.
Answer improve(const JudgeRequest& request);

// The same puzzle in other clothes, its balance carried along.
struct VaryRequest {
  std::string puzzle;
  int seed = 1;
  int count = 1;
  std::string left = {};  // both pans, or neither: the best balance after the basics
  std::string right = {};
};
Answer vary(const VaryRequest& request);

}  // namespace cp::api
