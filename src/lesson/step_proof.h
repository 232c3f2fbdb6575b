// SPDX-License-Identifier: Apache-2.0
// Does this step of the lesson follow, and by what? Found again at the position as it stands, then replayed by verify.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "claim/verdict.h"
#include "lesson/build.h"
#include "lesson/directive.h"
#include "step/step.h"

namespace cp {

// A step with its reason; `text` replaces words made from the reason when it was proved as a claim.
struct ProvenStep {
  Position before;
  Step step;
  std::string text;
  bool is_by_search = false;  // no technique of the catalogue and no balance of the lesson gives it
};

using StepProof = std::variant<std::vector<ProvenStep>, BuildStop>;

// Finds the step of a @step line: by the technique or balance it names; without a name by the easiest technique of the catalogue,
// then by a balance of the lesson, then as a claim. `board`: what is known of the puzzle at this position.
StepProof prove_step(const Board& board, const Directive& directive, const Vocabulary& names);

// All steps of these techniques until none is left.
StepProof prove_run(const Board& board, const std::vector<std::string>& techniques);

}  // namespace cp
