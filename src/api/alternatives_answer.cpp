// SPDX-License-Identifier: Apache-2.0
#include "path/alternatives.h"

#include "api/commands.h"
#include "api/parts.h"
#include "api/step_json.h"
#include "base/text.h"
#include "grid/notation.h"

namespace cp::api {

namespace {

Error not_a_candidate(std::string_view text, std::string message) {
  return Error{ErrorCode::kBadArgument, std::move(message), "write the candidate that is to fall as r3c4=5 or r3c4!=5", {0, text.size(), 1, 1}};
}

// "r3c4=5", "r3c4 != 5", "r3c4<>5": the candidate named.
Result<Candidate> read_candidate(const Shape& shape, std::string_view text) {
  const std::size_t sign = text.find_first_of("=!<");
  const std::size_t unequal = text.find("\u2260");
  const std::size_t cut = std::min(sign, unequal);
  if (cut == std::string_view::npos) return not_a_candidate(text, "'" + std::string(text) + "' names no candidate");
  const auto cell = shape.parse_cell(trimmed(text.substr(0, cut)));
  if (!cell) return cell.error();
  std::string_view rest = text.substr(cut);
  for (const std::string_view each : {"=", "!=", "<>", "\u2260"}) {
    if (!rest.starts_with(each)) continue;
    const std::string_view word = trimmed(rest.substr(each.size()));
    const auto digit = word.size() == 1 ? digit_from(word[0], shape) : std::nullopt;
    if (!digit) return not_a_candidate(text, "'" + std::string(word) + "' is not one digit of this grid");
    return Candidate{*cell, *digit};
  }
  return not_a_candidate(text, "'" + std::string(text) + "' names no candidate");
}

// The position before step N of the easiest path.
Result<Position> before_step(const Position& start, int number, int most_free_slack) {
  PathOptions options;
  options.most_free_slack = most_free_slack;
  options.most_steps = number;
  const auto path = find_path(start, options);
  if (!path) return path.error();
  const int steps = static_cast<int>(path->steps.size());
  if (steps >= number) return path->steps[static_cast<std::size_t>(number - 1)].before;
  return Error{ErrorCode::kBadArgument, "the path of this puzzle has " + counted(steps, "step"), "choose a step from 1 to " + to_text(steps), {}};
}

}  // namespace

Answer alternatives(const AlternativesRequest& request) {
  if (auto wrong = out_of_range("max_slack", request.max_slack, 0, kMostFreeSlack)) return std::move(*wrong);
  if (auto wrong = out_of_range("limit", request.limit, 0, 1'000'000)) return std::move(*wrong);
  if (auto wrong = out_of_range("at_step", request.at_step, 0, 10'000)) return std::move(*wrong);
  auto position = open_position(request.puzzle, request.after_basics);
  if (!position) return refuse(position.error(), "puzzle");
  if (request.at_step > 0) {
    position = before_step(*position, request.at_step, request.max_slack);
    if (!position) return refuse(position.error(), "at_step");
  }
  const auto target = read_candidate(position->shape(), request.eliminate);
  if (!target) return refuse(target.error(), "eliminate");
  const std::string name = position->shape().name_of(target->cell) + " = " + Shape::name_of(target->digit);
  if (position->is_placed(target->cell) || !position->has(*target)) {
    const std::string why = position->is_placed(target->cell) ? " has its digit already" : " is out already at this position";
    return refuse(not_a_candidate(request.eliminate, (position->is_placed(target->cell) ? position->shape().name_of(target->cell) : name) + why), "eliminate");
  }
  const Alternatives found = cp::alternatives(*position, *target, whole_catalogue(), {request.max_slack, static_cast<std::size_t>(request.limit)});
  Answer answer;
  answer.json["target"] = candidates_json(position->shape(), {*target})[0];
  answer.json["found"] = found.found;
  Json steps = Json::array();
  for (const PathStep& step : found.steps) steps.push_back(step_json(step));
  answer.json["alternatives"] = std::move(steps);
  answer.json["position"] = to_candidate_text(*position);
  if (found.steps.empty()) answer.outcome = Outcome::kOpen;
  return answer;
}

}  // namespace cp::api
