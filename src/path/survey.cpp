// SPDX-License-Identifier: Apache-2.0
#include "path/survey.h"

#include <algorithm>

#include "path/some_steps.h"
#include "speak/step_text.h"

namespace cp {

namespace {

TechniquePlaces places_of(const Position& position, const Technique& technique) {
  TechniquePlaces places;
  places.technique = &technique;
  SomeSteps some(kMostPlaces + 1);
  technique.find(position, some);
  places.is_cut = some.steps.size() > kMostPlaces;
  if (places.is_cut) some.steps.pop_back();
  for (Step& step : some.steps) {
    PathStep at{position, std::move(step), {}, 0, {}};
    at.measure = measure(at.step, position, &technique);
    at.text = step_text(at.step, position);
    places.steps.push_back(std::move(at));
  }
  std::stable_sort(places.steps.begin(), places.steps.end(), [](const PathStep& a, const PathStep& b) { return a.measure.cost < b.measure.cost; });
  return places;
}

}  // namespace

Survey survey(const Position& position, const Selection& selection, const SurveyOptions& options) {
  Survey all;
  for (const Technique* technique : selection.techniques) {
    TechniquePlaces places = places_of(position, *technique);
    if (!places.steps.empty()) all.places.push_back(std::move(places));
  }
  if (!selection.balances || !can_find(position.shape())) return all;
  FinderOptions finder;
  finder.most_free_slack = options.most_free_slack;
  finder.limit = options.most_balances;
  all.balances = find_balances(position, finder).balances;
  return all;
}

std::vector<NearMiss> near_misses(const Position& position, const Technique& technique, const std::vector<Candidate>& candidates, std::size_t most) {
  std::vector<std::pair<int, NearMiss>> found;
  for (const Candidate& missing : candidates) {
    Position without = position;
    if (!without.eliminate(missing)) continue;
    FirstStep first;
    technique.find(without, first);
    if (!first.found) continue;
    const int facts = measure(first.first, without, &technique).facts;
    found.emplace_back(facts, NearMiss{missing, std::move(first.first)});
  }
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<NearMiss> nearest;
  for (auto& [facts, miss] : found) {
    if (nearest.size() >= most) break;
    nearest.push_back(std::move(miss));
  }
  return nearest;
}

}  // namespace cp
