// SPDX-License-Identifier: Apache-2.0
// What can a person see? A technique looks at a position and says every step of its kind that it offers.
// One technique is one source file and one line in catalogue.def; nothing else has to know of it.
//
// A technique is a pure function: no memory between calls, the same steps in the same order for the same position.
// - A step is reported only when it places a digit or strikes out at least one candidate.
// - No two steps of one call have the same reason; two may well have the same conclusions for different reasons.
// - Houses are looked at in the order boxes, rows, columns (boxes are easiest to see), each kind by number; inside a
//   house cells go by index and digits by size. Fish: by digit, rows as bases before columns.
// - Sizes are true sizes: a pattern that contains a smaller one is left to the technique of the smaller one. So the end
//   that a choice of techniques reaches is certain to be the same in any order when the smaller ones of each family and
//   the two singles take part; with a gap (pairs off, triples on) it may depend on the order.
// - In a position that contradicts itself a technique still ends, but what it says there means nothing.
#pragma once

#include <string_view>
#include <vector>

#include "base/result.h"
#include "grid/position.h"
#include "step/step.h"

namespace cp {

// Reports the steps of one technique to the sink, until the sink has had enough.
using FindSteps = void (*)(const Position& position, StepSink& sink);

struct Technique {
  std::string_view id;      // "naked-pair"; static text, also in Step::technique
  std::string_view name;    // "naked pair", as said in a sentence
  std::string_view family;  // "single", "fish", "one-digit", ...
  int cost = 0;             // base load on a person; the scale is explained in catalogue.def
  bool needs_unique = false;  // true: its steps hold only if the puzzle has exactly one solution
  FindSteps find = nullptr;
};

// All techniques in the order of catalogue.def (by id). Lives for the whole program.
const std::vector<Technique>& catalogue();

// The technique with this id; null when there is none.
const Technique* technique_or_null(std::string_view id);
// The same. Error: kBadName, with the ids that look most alike as a hint.
Result<const Technique*> find_technique(std::string_view id);

}  // namespace cp
