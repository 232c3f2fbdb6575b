// SPDX-License-Identifier: Apache-2.0
#include "api/composed_json.h"

#include "api/parts.h"
#include "grid/canonical_form.h"
#include "grid/notation.h"
#include "speak/step_text.h"
#include "verify/step_check.h"

namespace cp::api {

namespace {

Json clean_json(const Cleanness& clean) {
  Json json = Json::object();
  json["key"] = clean.key();
  json["load"] = clean.load;
  json["other_balances"] = clean.other_balances;
  json["other_techniques"] = clean.other_techniques;
  json["irreducible"] = clean.is_irreducible;
  json["tail_steps"] = clean.tail_steps;
  json["tail_hardest"] = clean.tail_hardest;
  json["hint"] = clean.hint;
  json["superfluous"] = clean.superfluous;
  return json;
}

}  // namespace

Result<ReadyPlan> read_ready_plan(const std::string& text) {
  auto plan = parse_plan(text);
  if (!plan) return plan.error();
  auto ground = ground_of(*plan);
  if (!ground) return ground.error();
  return ReadyPlan{std::move(*plan), std::move(*ground)};
}

Result<Json> composed_json(const Plan& plan, const Position& puzzle, const WayIn& way, const Cleanness& clean) {
  const CheckResult check = check_step(way.stuck, way.step);
  if (!check.holds) return Error{ErrorCode::kBug, "the way in does not hold before the checker: " + check.why, "please report the plan and the seed", {}};
  Json json = Json::object();
  json["puzzle"] = givens_line(puzzle);
  json["givens"] = puzzle.givens().size();
  json["idea"] = plan.idea.is_balance() ? std::string(kBalanceId) : plan.idea.technique;
  if (plan.idea.is_balance()) {
    json["left"] = pan_text(puzzle.shape(), way.weights, true);
    json["right"] = pan_text(puzzle.shape(), way.weights, false);
    json["slack"] = way.free_slack;
    if (const auto* reason = std::get_if<BalanceReason>(&way.step.reason)) json["level"] = reason->level;
  }
  json["stuck"] = to_line(way.stuck);
  json["eliminations"] = candidates_json(puzzle.shape(), way.step.eliminations);
  if (!way.step.placements.empty()) json["placements"] = candidates_json(puzzle.shape(), way.step.placements);
  json["text"] = step_text(way.step, way.stuck);
  json["clean"] = clean_json(clean);
  json["form"] = canonical_form(puzzle).text;
  return json;
}

std::string_view name_of(Stage stage) {
  switch (stage) {
    case Stage::kTried: return "tried";
    case Stage::kLaidOut: return "laid_out";
    case Stage::kProper: return "proper";
    case Stage::kStuck: return "stuck";
    case Stage::kNoOther: return "no_other";
    case Stage::kMoved: return "moved";
    case Stage::kMet: break;
  }
  return "met";
}

}  // namespace cp::api
