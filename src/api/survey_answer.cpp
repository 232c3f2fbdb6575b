// SPDX-License-Identifier: Apache-2.0
#include "api/balance_json.h"
#include "api/commands.h"
#include "api/parts.h"
#include "api/step_json.h"
#include "api/technique_names.h"
#include "grid/notation.h"
#include "path/survey.h"
#include "speak/step_text.h"

namespace cp::api {

namespace {

constexpr std::size_t kMostNearMisses = 5;

Json places_json(const TechniquePlaces& places, std::size_t limit) {
  Json json = Json::object();
  json["technique"] = places.technique->id;
  json["name"] = places.technique->name;
  json["family"] = places.technique->family;
  json["needs_unique"] = places.technique->needs_unique;
  json["cost"] = places.steps.front().measure.cost;
  json["count"] = places.steps.size();
  json["is_cut"] = places.is_cut;
  Json steps = Json::array();
  for (const PathStep& step : places.steps) {
    if (limit > 0 && steps.size() >= limit) break;
    steps.push_back(step_json(step));
  }
  json["steps"] = std::move(steps);
  return json;
}

// Candidates that the one solution does not have.
std::vector<Candidate> false_candidates(const Position& position, const FullGrid& solution) {
  std::vector<Candidate> found;
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) {
      if (solution.at(cell) != digit) found.push_back({cell, digit});
    }
  }
  return found;
}

Json near_json(const Position& position, const NearMiss& near) {
  const Shape& shape = position.shape();
  Position without = position;
  without.eliminate(near.missing);
  Json json = Json::object();
  json["missing"] = candidates_json(shape, {near.missing})[0];
  json["placements"] = candidates_json(shape, near.step.placements);
  json["eliminations"] = candidates_json(shape, near.step.eliminations);
  json["text"] = step_text(near.step, without);
  return json;
}

// How close the named techniques come that do not fire.
Json close_json(const Position& position, const Selection& selection, const Survey& found) {
  const Properness proper = properness_of(position);
  Json close = Json::array();
  for (const Technique* technique : selection.techniques) {
    const bool fires = std::any_of(found.places.begin(), found.places.end(), [&](const TechniquePlaces& places) { return places.technique == technique; });
    if (fires) continue;
    Json json = Json::object();
    json["technique"] = technique->id;
    json["name"] = technique->name;
    json["can_tell"] = proper.solutions == Properness::Solutions::kOne;
    Json near = Json::array();
    if (proper.solutions == Properness::Solutions::kOne) {
      const auto candidates = false_candidates(position, proper.grids.front());
      for (const NearMiss& miss : near_misses(position, *technique, candidates, kMostNearMisses)) near.push_back(near_json(position, miss));
    }
    json["near"] = std::move(near);
    close.push_back(std::move(json));
  }
  return close;
}

}  // namespace

Answer survey(const SurveyRequest& request) {
  if (auto wrong = out_of_range("max_slack", request.max_slack, 0, kMostFreeSlack)) return std::move(*wrong);
  if (auto wrong = out_of_range("limit", request.limit, 0, 1'000'000)) return std::move(*wrong);
  if (auto wrong = unknown_technique("technique", request.techniques)) return std::move(*wrong);
  const auto position = open_position(request.puzzle, request.after_basics);
  if (!position) return refuse(position.error(), "puzzle");
  const auto selection = select_techniques(request.techniques, {});
  if (!selection) return refuse(selection.error(), "technique");
  const Survey found = cp::survey(*position, *selection, {request.max_slack, static_cast<std::size_t>(request.limit)});
  Answer answer;
  answer.json["open_cells"] = position->open().size();
  Json techniques = Json::array();
  for (const TechniquePlaces& places : found.places) techniques.push_back(places_json(places, static_cast<std::size_t>(request.limit)));
  answer.json["techniques"] = std::move(techniques);
  Json balances = Json::array();
  for (const FoundBalance& balance : found.balances) balances.push_back(balance_json(*position, balance.weighing, balance.free_slack, balance.result));
  answer.json["balances"] = std::move(balances);
  if (!request.techniques.empty()) answer.json["close"] = close_json(*position, *selection, found);
  answer.json["position"] = to_candidate_text(*position);
  return answer;
}

}  // namespace cp::api
