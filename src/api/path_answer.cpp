// SPDX-License-Identifier: Apache-2.0
#include "api/balance_json.h"
#include "api/commands.h"
#include "api/parts.h"
#include "api/step_json.h"
#include "api/technique_names.h"
#include "base/text.h"
#include "grid/notation.h"

namespace cp::api {

Json stuck_json(const Path& path) {
  const Position& position = path.end_position;
  Json json = Json::object();
  json["position"] = to_line(position);
  json["candidates"] = to_candidate_text(position);
  std::string text;
  if (path.end == PathEnd::kImpossible) {
    text = "The position has no solution: " + clash_in_words(position) + ".";
  } else {
    text = "No step is left that may be used; " + counted(position.open().size(), "cell") + (position.open().size() == 1 ? " is" : " are") + " open.";
    const auto solutions = properness_of(position).solutions;
    if (solutions == Properness::Solutions::kMany) text += " The puzzle has more than one solution, so no path can reach the end.";
    if (solutions == Properness::Solutions::kNone) text += " The puzzle has no solution.";
  }
  json["text"] = text;
  return json;
}

Json path_measure_json(const Path& path) {
  const PathMeasure all = measure(path);
  Json json = Json::object();
  json["steps"] = all.steps;
  json["hardest"] = all.hardest;
  if (!all.technique.empty()) json["hardest_technique"] = all.technique;
  json["effort"] = all.effort;
  json["beyond_singles"] = all.beyond_singles;
  json["narrow"] = all.narrow;
  json["open_tenths"] = all.open_tenths;
  return json;
}

Json measure_json(const Measure& measure) {
  Json json = Json::object();
  json["facts"] = measure.facts;
  json["houses"] = measure.houses;
  json["cells"] = measure.cells;
  json["digits"] = measure.digits;
  json["lines"] = measure.lines;
  json["cases"] = measure.cases;
  json["supposes"] = measure.supposes;
  json["needs_unique"] = measure.needs_unique;
  return json;
}

Json step_json(const PathStep& at) {
  const Shape& shape = at.before.shape();
  Json json = Json::object();
  json["technique"] = at.step.technique;
  json["placements"] = candidates_json(shape, at.step.placements);
  json["eliminations"] = candidates_json(shape, at.step.eliminations);
  json["text"] = at.text;
  json["cost"] = at.measure.cost;
  if (at.open > 0) json["open"] = at.open;
  json["measure"] = measure_json(at.measure);
  if (const auto* reason = std::get_if<BalanceReason>(&at.step.reason)) json["balance"] = balance_json(at.before, at.step.eliminations, *reason);
  return json;
}

Answer path(const PathRequest& request) {
  if (auto wrong = out_of_range("max_slack", request.max_slack, 0, kMostFreeSlack)) return std::move(*wrong);
  if (auto wrong = unknown_technique("without", request.without)) return std::move(*wrong);
  if (auto wrong = unknown_technique("only", request.only)) return std::move(*wrong);
  const auto position = parse_position(request.puzzle);
  if (!position) return refuse(position.error(), "puzzle");
  PathOptions options;
  options.without = request.without;
  options.only = request.only;
  options.most_free_slack = request.max_slack;
  const auto found = find_path(*position, options);
  if (!found) return refuse(found.error(), "without");
  Answer answer;
  answer.json["solved"] = found->end == PathEnd::kSolved;
  Json steps = Json::array();
  for (const PathStep& step : found->steps) steps.push_back(step_json(step));
  answer.json["steps"] = std::move(steps);
  answer.json["measure"] = path_measure_json(*found);
  if (found->end != PathEnd::kSolved) answer.json["stuck"] = stuck_json(*found);
  if (found->end == PathEnd::kStuck) answer.outcome = Outcome::kOpen;
  if (found->end == PathEnd::kImpossible) answer.outcome = Outcome::kRefuted;
  return answer;
}

}  // namespace cp::api
