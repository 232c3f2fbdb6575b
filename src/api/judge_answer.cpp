// SPDX-License-Identifier: Apache-2.0
#include "api/compose_commands.h"
#include "api/composed_json.h"
#include "api/parts.h"
#include "base/text.h"
#include "compose/improve.h"
#include "grid/notation.h"
#include "speak/naming.h"

namespace cp::api {

namespace {

// Plan and puzzle of a request, or what is wrong with them.
struct Case {
  std::optional<ReadyPlan> ready;
  std::optional<Position> puzzle;
  Answer fault;
};

Case read_case(const std::string& puzzle_text, const std::string& plan_text) {
  Case read;
  auto ready = read_ready_plan(plan_text);
  if (!ready) {
    read.fault = refuse(ready.error(), "plan");
    return read;
  }
  const auto puzzle = parse_position(puzzle_text);
  if (!puzzle) {
    read.fault = refuse(puzzle.error(), "puzzle");
    return read;
  }
  if (&puzzle->shape() != &plan_shape()) {
    read.fault = refuse(Error{ErrorCode::kBadArgument, "plans are made for 9x9 puzzles, and this one is " + std::string(puzzle->shape().name()), "give a 9x9 puzzle", {}}, "puzzle");
    return read;
  }
  read.ready = std::move(*ready);
  read.puzzle = *puzzle;
  return read;
}

std::optional<Answer> wrong_numbers(const JudgeRequest& request, int least_limit) {
  if (auto wrong = out_of_range("limit", request.limit, least_limit, 100)) return wrong;
  return out_of_range("most_changes", request.most_changes, 1, 2);
}

Json change_json(const Improvement& each) {
  const Shape& shape = each.puzzle.shape();
  Json json = Json::object();
  json["puzzle"] = givens_line(each.puzzle);
  json["drop"] = cells_json(shape, each.change.dropped);
  std::vector<Candidate> added;
  for (const Cell cell : each.change.added) added.push_back({cell, *each.puzzle.digit_at(cell)});
  json["add"] = candidates_json(shape, added);
  json["points_met"] = each.met;
  json["points"] = each.asked;
  if (each.clean) json["key"] = each.clean->key();
  std::vector<std::string> words;
  if (!each.change.dropped.is_empty()) words.push_back("without " + cell_names(shape, each.change.dropped));
  for (const Candidate& candidate : added) words.push_back(std::string("with ") + Shape::name_of(candidate.digit) + " in " + shape.name_of(candidate.cell));
  json["text"] = capitalised(listed(words)) + " it meets " + (each.met == each.asked ? "the plan" : to_text(each.met) + " of " + to_text(each.asked) + " points") + ".";
  return json;
}

Json judgement_json(const Judgement& judgement) {
  Json json = Json::object();
  json["meets"] = judgement.is_met();
  json["points"] = Json::array();
  for (const JudgedPoint& point : judgement.points) {
    Json item = Json::object();
    item["point"] = point.name;
    item["met"] = point.is_met;
    item["asked"] = point.is_asked;
    item["text"] = point.text;
    json["points"].push_back(std::move(item));
  }
  json["shortcuts"] = Json::array();
  for (const Shortcut& shortcut : judgement.shortcuts) {
    Json item = Json::object();
    item["technique"] = shortcut.technique;
    item["position"] = to_line(shortcut.position);
    item["candidates"] = to_candidate_text(shortcut.position);
    item["text"] = shortcut.text;
    json["shortcuts"].push_back(std::move(item));
  }
  if (judgement.clean) json["key"] = judgement.clean->key();
  return json;
}

Json changes_json(const Improvements& improvements) {
  Json list = Json::array();
  for (const Improvement& each : improvements.best) list.push_back(change_json(each));
  return list;
}

}  // namespace

Answer judge(const JudgeRequest& request) {
  if (auto wrong = wrong_numbers(request, 0)) return std::move(*wrong);
  Case read = read_case(request.puzzle, request.plan);
  if (!read.ready) return std::move(read.fault);
  const Examiner examiner(read.ready->plan);
  Answer answer;
  if (request.limit == 0) {
    answer.json = judgement_json(cp::judge(examiner, read.ready->ground, *read.puzzle));
  } else {
    const Improvements improvements = cp::improve(examiner, read.ready->ground, *read.puzzle, {static_cast<std::size_t>(request.limit), request.most_changes});
    answer.json = judgement_json(improvements.before);
    answer.json["tried"] = improvements.tried;
    answer.json["changes"] = changes_json(improvements);
  }
  if (!answer.json["meets"].get<bool>()) answer.outcome = Outcome::kRefuted;
  return answer;
}

Answer improve(const JudgeRequest& request) {
  if (auto wrong = wrong_numbers(request, 1)) return std::move(*wrong);
  Case read = read_case(request.puzzle, request.plan);
  if (!read.ready) return std::move(read.fault);
  const Examiner examiner(read.ready->plan);
  const Improvements improvements = cp::improve(examiner, read.ready->ground, *read.puzzle, {static_cast<std::size_t>(request.limit), request.most_changes});
  Answer answer;
  answer.json["meets"] = improvements.before.is_met();
  answer.json["points_met"] = improvements.before.met();
  answer.json["points"] = improvements.before.points.size();
  if (improvements.before.clean) answer.json["key"] = improvements.before.clean->key();
  answer.json["tried"] = improvements.tried;
  answer.json["changes"] = changes_json(improvements);
  if (improvements.best.empty()) answer.outcome = Outcome::kOpen;
  return answer;
}

}  // namespace cp::api
