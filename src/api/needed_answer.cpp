// SPDX-License-Identifier: Apache-2.0
#include "path/needed.h"

#include <set>

#include "api/commands.h"
#include "api/parts.h"
#include "api/step_json.h"
#include "api/technique_names.h"
#include "base/text.h"
#include "grid/notation.h"

namespace cp::api {

namespace {

// Every technique of a path once, in the order in which they come.
Json techniques_of(const Path& path) {
  Json names = Json::array();
  std::set<std::string_view> seen;
  for (const PathStep& step : path.steps) {
    if (seen.insert(step.step.technique).second) names.push_back(step.step.technique);
  }
  return names;
}

Json way_json(const Path& path, bool with_steps) {
  Json json = Json::object();
  json["solved"] = path.end == PathEnd::kSolved;
  json["techniques"] = techniques_of(path);
  json["measure"] = path_measure_json(path);
  if (with_steps) {
    Json steps = Json::array();
    for (const PathStep& step : path.steps) steps.push_back(step_json(step));
    json["steps"] = std::move(steps);
  }
  if (path.end != PathEnd::kSolved) json["stuck"] = stuck_json(path);
  return json;
}

std::string in_words(const Needed& needed, const std::vector<std::string>& names) {
  const std::string what = listed(names, "or");
  const std::string open = counted(needed.without.end_position.open().size(), "cell");
  switch (needed.answer) {
    case Needed::Answer::kNo:
      return "Not needed: a path without " + what + " solves the puzzle in " + counted(static_cast<int>(needed.without.steps.size()), "step") + "." +
             (needed.is_used ? "" : " The easiest path does not use it either.");
    case Needed::Answer::kYes:
      return "Needed, as far as this catalogue goes: without " + what + " everything else stops with " + open + " open, in " +
             counted(needed.orders, "order") + " tried; with it the puzzle is solved.";
    default:
      return "Open: the catalogue does not solve this puzzle, neither with " + what + " nor without; without it " + open + " stay open.";
  }
}

}  // namespace

Answer needed(const NeededRequest& request) {
  if (auto wrong = out_of_range("max_slack", request.max_slack, 0, kMostFreeSlack)) return std::move(*wrong);
  if (request.techniques.empty()) {
    return refuse(Error{ErrorCode::kBadArgument, "no technique is named", "name one, for example --technique x-wing or --technique balance", {}}, "technique");
  }
  if (auto wrong = unknown_technique("technique", request.techniques)) return std::move(*wrong);
  if (auto wrong = unknown_technique("without", request.without)) return std::move(*wrong);
  const auto puzzle = open_position(request.puzzle, false);
  if (!puzzle) return refuse(puzzle.error(), "puzzle");
  const auto found = is_needed(*puzzle, {request.techniques, request.without, request.max_slack});
  if (!found) return refuse(found.error(), "technique");
  Answer answer;
  const bool is_open = found->answer == Needed::Answer::kOpen;
  answer.json["needed"] = is_open ? "open" : found->answer == Needed::Answer::kYes ? "yes" : "no";
  answer.json["used"] = found->is_used;
  answer.json["orders"] = found->orders;
  answer.json["text"] = in_words(*found, request.techniques);
  answer.json["with"] = way_json(found->with, false);
  answer.json["without"] = way_json(found->without, true);
  if (is_open) answer.outcome = Outcome::kOpen;
  if (found->with.end == PathEnd::kImpossible || found->without.end == PathEnd::kImpossible) answer.outcome = Outcome::kRefuted;
  return answer;
}

}  // namespace cp::api
