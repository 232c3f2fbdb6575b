// SPDX-License-Identifier: Apache-2.0
#include "api/api.h"

#include <array>
#include <span>
#include <vector>

#include "api/compose_commands.h"
#include "api/fields.h"
#include "api/lesson_doors.h"
#include "api/near_names.h"

namespace cp::api {

namespace {

Answer ask_check(Fields& fields) {
  const CheckRequest request{fields.text("puzzle")};
  if (auto fault = fields.finish()) return std::move(*fault);
  return check(request);
}

Answer ask_path(Fields& fields) {
  const PathRequest request{fields.text("puzzle"), fields.texts("without"), fields.number("max_slack", 1), fields.texts("only")};
  if (auto fault = fields.finish()) return std::move(*fault);
  return path(request);
}

Answer ask_survey(Fields& fields) {
  const SurveyRequest request{fields.text("puzzle"), fields.texts("technique"), fields.flag("after_basics", false), fields.number("max_slack", 1), fields.number("limit", 5)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return survey(request);
}

Answer ask_needed(Fields& fields) {
  const NeededRequest request{fields.text("puzzle"), fields.texts("technique"), fields.texts("without"), fields.number("max_slack", 1)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return needed(request);
}

Answer ask_alternatives(Fields& fields) {
  const AlternativesRequest request{fields.text("puzzle"), fields.text("eliminate"), fields.flag("after_basics", false), fields.number("at_step", 0),
                                    fields.number("max_slack", 1), fields.number("limit", 20)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return alternatives(request);
}

// Houses named: that balance. None named: all that say something.
Answer ask_weigh(Fields& fields) {
  if (fields.has("left") || fields.has("right")) {
    const WeighRequest request{fields.text("puzzle"), fields.text("left", ""), fields.text("right", ""), fields.flag("after_basics", false), fields.number("level", 5), fields.flag("why", false)};
    if (auto fault = fields.finish()) return std::move(*fault);
    return weigh(request);
  }
  const FindRequest request{fields.text("puzzle"), fields.flag("after_basics", false), fields.number("max_slack", 1), fields.number("limit", 20), fields.number("most_houses", 99)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return find(request);
}

Answer ask_claim(Fields& fields) {
  const ClaimRequest request{fields.text("puzzle"), fields.text("claim"), fields.text("footing", ""), fields.flag("after_basics", false), fields.flag("reveal", false)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return claim(request);
}

Answer ask_claims(Fields& fields) {
  const ClaimsRequest request{fields.text("script"), fields.text("puzzle", ""), fields.text("footing", ""), fields.flag("after_basics", false), fields.flag("reveal", false)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return claims(request);
}

Answer ask_plan_check(Fields& fields) {
  const PlanRequest request{fields.text("plan")};
  if (auto fault = fields.finish()) return std::move(*fault);
  return plan_check(request);
}

Answer ask_compose(Fields& fields) {
  const ComposeRequest request{fields.text("plan"), fields.number_if_there("seed"), fields.number("count", 10), fields.number("of", 0), fields.number("most_tries", 0), fields.number("threads", 1), fields.text("state", "")};
  if (auto fault = fields.finish()) return std::move(*fault);
  return compose(request);
}

JudgeRequest judge_request(Fields& fields) { return {fields.text("puzzle"), fields.text("plan"), fields.number("limit", 5), fields.number("most_changes", 2)}; }

Answer ask_judge(Fields& fields) {
  const JudgeRequest request = judge_request(fields);
  if (auto fault = fields.finish()) return std::move(*fault);
  return judge(request);
}

Answer ask_improve(Fields& fields) {
  const JudgeRequest request = judge_request(fields);
  if (auto fault = fields.finish()) return std::move(*fault);
  return improve(request);
}

Answer ask_vary(Fields& fields) {
  const VaryRequest request{fields.text("puzzle"), fields.number("seed", 1), fields.number("count", 1), fields.text("left", ""), fields.text("right", "")};
  if (auto fault = fields.finish()) return std::move(*fault);
  return vary(request);
}

Answer ask_count(Fields& fields) {
  const CountRequest request{fields.text("shape")};
  if (auto fault = fields.finish()) return std::move(*fault);
  return count(request);
}

Answer ask_bench(Fields& fields) {
  const BenchRequest request{fields.flag("quick", false)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return bench(request);
}

constexpr std::array<Door, 15> kDoors = {{{"check", ask_check},
                                          {"survey", ask_survey},
                                          {"needed", ask_needed},
                                          {"alternatives", ask_alternatives},
                                          {"path", ask_path},
                                          {"weigh", ask_weigh},
                                          {"claim", ask_claim},
                                          {"claims", ask_claims},
                                          {"plan_check", ask_plan_check},
                                          {"compose", ask_compose},
                                          {"judge", ask_judge},
                                          {"improve", ask_improve},
                                          {"vary", ask_vary},
                                          {"count", ask_count},
                                          {"bench", ask_bench}}};

// All commands. The module for pages is built without those that write lessons (docs/adr/0014-a-module-that-writes-no-lessons.md).
std::array<std::span<const Door>, 2> all_doors() {
#ifdef CP_WRITES_NO_LESSONS
  return {kDoors, {}};
#else
  return {kDoors, lesson_doors()};
#endif
}

Answer unknown_command(const std::string& name) {
  std::vector<std::string> names;
  for (const std::span<const Door> doors : all_doors()) {
    for (const Door& door : doors) names.emplace_back(door.name);
  }
  return refuse(Error{ErrorCode::kBadName, "'" + name + "' is not a command", name_hint(name, names, "the commands are"), {}}, "command");
}

}  // namespace

Answer answer_json(const Json& request) {
  if (!request.is_object()) {
    return refuse(Error{ErrorCode::kBadArgument, "the request is not an object", "send an object such as {\"command\":\"check\",\"puzzle\":\"...\"}", {}});
  }
  Fields fields(request);
  const std::string name = fields.text("command");
  if (!request.contains("command") || !request["command"].is_string()) {
    return refuse(Error{ErrorCode::kBadArgument, "the request names no command", "add \"command\": \"check\"", {}}, "command");
  }
  for (const std::span<const Door> doors : all_doors()) {
    for (const Door& door : doors) {
      if (door.name == name) return door.ask(fields);
    }
  }
  return unknown_command(name);
}

std::string answer(std::string_view request) {
  const Json json = Json::parse(request, nullptr, false);
  if (json.is_discarded()) {
    return to_line(refuse(Error{ErrorCode::kBadArgument, "the request is not JSON", "send an object such as {\"command\":\"check\",\"puzzle\":\"...\"}", {}}).json);
  }
  return to_line(answer_json(json).json);
}

}  // namespace cp::api
