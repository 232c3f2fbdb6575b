// SPDX-License-Identifier: Apache-2.0
// What is in this puzzle? All that a collection keeps of it and a search asks for, as plain values. docs/formats/scan.md
// gives the same as JSON; a record read back equals the one written.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace cp {

// How far a survey looks. Each depth asks everything of those before it.
enum class SurveyDepth : std::uint8_t {
  kForm,      // "form": givens, number of solutions, canonical form
  kBasics,    // "basics": a path of singles, locked candidates, subsets and basic fish
  kBalances,  // "balances": the same with balances of slack 0
  kFull,      // "full": the whole catalogue, balances of free slack 0 and 1, how many steps were open
};
[[nodiscard]] std::string_view name_of(SurveyDepth depth);
[[nodiscard]] std::optional<SurveyDepth> survey_depth_named(std::string_view name);

// A technique on the easiest path.
struct TechniqueUse {
  std::string technique;  // its id, or "balance"
  int steps = 0;
  friend bool operator==(const TechniqueUse&, const TechniqueUse&) = default;
};

// The easiest path within the depth: how it ends and what it asks (docs/measure.md).
struct SurveyPath {
  std::string end;              // "solved", "stuck", "impossible"
  int steps = 0;
  int hardest = 0;              // the greatest cost of a step
  std::string technique;        // of the first step with that cost; "" without a step
  int effort = 0;               // all costs together
  int beyond_singles = 0;       // steps that are no singles
  int narrow = -1;              // of those, the only step of their cost or less; -1: not counted (below kFull)
  int open_tenths = -1;         // mean number of open steps, in tenths; -1: not counted
  std::vector<TechniqueUse> techniques;  // in the order of their first step
  std::vector<std::string> tail;         // techniques after the first step of the greatest cost, in order, each once
  friend bool operator==(const SurveyPath&, const SurveyPath&) = default;
};

// A balance of the position after the basics. Its kind says what stands in the pans, whichever is which:
// "rows against columns", "rows and boxes against columns", "boxes against boxes" (rows, columns, boxes in this order).
struct BalanceNote {
  std::string left;   // "r1,r2", as weigh reads it
  std::string right;
  std::string kind;
  int surplus = 0;
  int slack = 0;      // before forced shares
  int free_slack = 0; // after them
  int level = 0;      // of reasoning, the weakest that strikes something out
  int load = 0;       // what one has to keep in mind
  int eliminations = 0;
  friend bool operator==(const BalanceNote&, const BalanceNote&) = default;
};

struct SurveyRecord {
  SurveyDepth depth = SurveyDepth::kForm;
  std::string puzzle;          // one character a cell, '.' for empty
  int givens = 0;
  std::string solutions;       // "one" (a proper puzzle), "none", "many"
  std::string canonical;       // "" for shapes without one
  std::uint64_t symmetries = 0;  // of the cells (canonical_form.h); 0 when canonical is ""
  // Only for proper puzzles and from kBasics on:
  std::optional<SurveyPath> path;
  int open_after_basics = 0;   // cells the basics leave open
  // Names without which the techniques of this depth do not solve the puzzle, though with them they do: "balance",
  // "uniqueness", and families of the catalogue beyond the basics. kBalances tells of "balance" alone; kFull asks only on
  // wish, because it is dear: then `asked_needed`.
  std::vector<std::string> needed;
  bool asked_needed = false;
  std::vector<BalanceNote> balances;  // the best of the position after the basics, best first; from kBalances on
  friend bool operator==(const SurveyRecord&, const SurveyRecord&) = default;

  [[nodiscard]] bool is_proper() const { return solutions == "one"; }
  // Proper, and the path leads to the solution. Always false at kForm.
  [[nodiscard]] bool is_solved() const { return is_proper() && path && path->end == "solved"; }
};

}  // namespace cp
