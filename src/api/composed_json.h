// SPDX-License-Identifier: Apache-2.0
// Plans and composed puzzles as JSON. Keys are explained in docs/formats/compose.md.
#pragma once

#include "api/answer.h"
#include "compose/cleanness.h"
#include "compose/ground.h"

namespace cp::api {

// A plan that can be worked with.
struct ReadyPlan {
  Plan plan;
  PlanGround ground;
};
// Reads a plan and looks whether its parts go together.
Result<ReadyPlan> read_ready_plan(const std::string& text);

// A puzzle that meets the plan, with what the idea says and how clean a lesson it makes. Error kBug when the idea does
// not hold before the checker of src/verify.
Result<Json> composed_json(const Plan& plan, const Position& puzzle, const WayIn& way, const Cleanness& clean);

// "tried", "laid_out", "proper", "stuck", "no_other", "moved", "met".
std::string_view name_of(Stage stage);

}  // namespace cp::api
