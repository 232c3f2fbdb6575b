// SPDX-License-Identifier: Apache-2.0
// Why a step holds when no single sum shows it: something is supposed, lines follow one another, cases are split.
// See docs/formats/step.md, "Argument reason", and ADR 7.
#pragma once

#include <optional>
#include <vector>

#include "grid/digit_set.h"
#include "step/linear_reason.h"

namespace cp {

// Cells that could be refilled. If each of them held one of its digits here, the digits of these cells could be
// exchanged so that every house keeps the same digits: the puzzle would have a second solution. So in a puzzle with
// exactly one solution at least one of the cells holds another digit. No cell of it is a given.
struct DeadlyPattern {
  std::vector<Cell> cells;        // ordered
  std::vector<DigitSet> digits;   // one set for each cell
};

// One line of an argument, judged on the candidates that the lines before it left:
// - a single base (one term, multiplier -1): the fact has one candidate left, which is therefore true and takes its
//   digit from all its peers; or it has none left, and the supposition or case is impossible;
// - otherwise a weighed sum: everything whose coefficient exceeds the right side falls; a negative right side shows
//   the supposition or case impossible.
// A deadly pattern may stand alone as a single base or as a split (it has at least one true candidate), never in a sum.
struct Line {
  std::vector<LinearTerm> terms;
};

// Lines in order; then, optionally, a split: one of the candidates that the fact has left is true. `cases` has one
// argument for each of them, ordered by cell and digit; each starts with that candidate true.
struct Argument {
  std::vector<Line> lines;
  std::optional<Constraint> split;
  std::vector<Argument> cases;
};

struct ArgumentReason {
  // True: each elimination in turn is supposed true, and the argument must come out impossible (in every case).
  // False: nothing is supposed, and every case must be impossible or have struck out all eliminations.
  bool supposes_target = true;
  std::vector<DeadlyPattern> patterns;  // what Constraint::Kind::kPattern counts through; empty: uniqueness is not used
  Argument argument;
};

}  // namespace cp
