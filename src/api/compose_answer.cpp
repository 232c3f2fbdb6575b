// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "api/compose_commands.h"
#include "api/composed_json.h"
#include "api/parts.h"
#include "base/text.h"
#include "compose/crew.h"
#include "grid/notation.h"

namespace cp::api {

namespace {

constexpr int kMostPuzzles = 10'000;
constexpr int kMostThreads = 256;

// The state as one line, and back: what compose needs to go on later.
std::string state_text(const Plan& plan, const ComposeState& state) {
  Json json = Json::object();
  json["counterpoise_compose"] = 1;
  json["plan"] = to_text(plan);
  json["seed"] = state.seed;
  json["next_block"] = state.next_block;
  json["reached"] = state.reached;
  json["repeated"] = state.repeated;
  json["found"] = Json::array();
  for (const Composed& each : state.found) {
    Json found = Json::object();
    found["puzzle"] = givens_line(each.puzzle);
    found["left"] = pan_text(each.puzzle.shape(), each.way.weights, true);
    found["right"] = pan_text(each.puzzle.shape(), each.way.weights, false);
    found["form"] = each.form;
    json["found"].push_back(std::move(found));
  }
  return to_line(json);
}

Error bad_state(std::string message) {
  return Error{ErrorCode::kBadArgument, std::move(message), "give a state that compose wrote for this plan, or none to start afresh", {}};
}

bool is_natural(const Json& json, const char* key) { return json.contains(key) && json[key].is_number_unsigned(); }

// A puzzle of the state, followed along the plan again.
Result<Composed> found_again(const Examiner& examiner, const Json& json) {
  for (const char* key : {"puzzle", "left", "right", "form"}) {
    if (!json.is_object() || !json.contains(key) || !json[key].is_string()) return bad_state("a puzzle of the state lacks its " + std::string(key));
  }
  const auto puzzle = parse_position(json["puzzle"].get<std::string>());
  if (!puzzle || &puzzle->shape() != &plan_shape() || puzzle->has_clash()) return bad_state("the state holds a puzzle that is none");
  std::vector<Weight> weights;
  if (examiner.plan().idea.is_balance()) {
    const auto pans = parse_pans(plan_shape(), json["left"].get<std::string>(), json["right"].get<std::string>());
    if (!pans) return bad_state("the state holds a balance that is none");
    weights = weigh(*puzzle, *pans).weights;
  }
  WayIn way = examiner.follow(*puzzle, weights);
  if (way.stage != Stage::kMet) return bad_state("a puzzle of the state does not meet the plan");
  return Composed{*puzzle, std::move(way), json["form"].get<std::string>()};
}

Result<ComposeState> read_state(const Examiner& examiner, const std::string& text) {
  const Json json = Json::parse(text, nullptr, false);
  if (!json.is_object() || !json.contains("counterpoise_compose") || json["counterpoise_compose"] != 1) return bad_state("this is no state of compose");
  if (!json.contains("plan") || json["plan"] != to_text(examiner.plan())) return bad_state("the state belongs to another plan");
  const bool is_whole = is_natural(json, "seed") && is_natural(json, "next_block") && is_natural(json, "repeated") && json.contains("reached") && json["reached"].is_array() &&
                        json["reached"].size() == kStageCount && json.contains("found") && json["found"].is_array();
  if (!is_whole) return bad_state("the state is not whole");
  ComposeState state;
  state.seed = json["seed"];
  state.next_block = json["next_block"];
  state.repeated = json["repeated"];
  for (std::size_t i = 0; i < kStageCount; ++i) {
    if (!json["reached"][i].is_number_unsigned()) return bad_state("the state is not whole");
    state.reached[i] = json["reached"][i];
  }
  for (const Json& each : json["found"]) {
    auto found = found_again(examiner, each);
    if (!found) return found.error();
    state.found.push_back(std::move(*found));
  }
  return state;
}

class Watch final : public ComposeWatch {
 public:
  Watch(const Plan& plan, ComposeObserver* observer) : plan_(plan), observer_(observer) {}
  bool goes_on(const ComposeState& state) override {
    if (observer_ == nullptr) return true;
    return observer_->goes_on({state.reached[0], state.reached, state.found.size()}, [&] { return state_text(plan_, state); });
  }

 private:
  const Plan& plan_;
  ComposeObserver* observer_;
};

Json yield_json(const ComposeState& state) {
  Json json = Json::object();
  for (std::size_t stage = 0; stage < kStageCount; ++stage) json[std::string(name_of(static_cast<Stage>(stage)))] = state.reached[stage];
  json["repeated"] = state.repeated;
  return json;
}

std::optional<Answer> wrong_numbers(const ComposeRequest& request) {
  if (auto wrong = out_of_range("count", request.count, 1, kMostPuzzles)) return wrong;
  if (request.of != 0) {
    if (auto wrong = out_of_range("of", request.of, request.count, kMostPuzzles)) return wrong;
  }
  if (auto wrong = out_of_range("threads", request.threads, 1, kMostThreads)) return wrong;
  if (auto wrong = out_of_range("seed", request.seed.value_or(1), 0, 2'000'000'000)) return wrong;
  return out_of_range("most_tries", request.most_tries, 0, 2'000'000'000);
}

// The cleanest puzzles first; of equals those that were found first.
Result<Json> best_of(const Plan& plan, const std::vector<Composed>& found, std::size_t count) {
  struct Ranked {
    const Composed* composed;
    Cleanness clean;
  };
  std::vector<Ranked> ranked;
  for (const Composed& each : found) ranked.push_back({&each, cleanness_of(plan, each.puzzle, each.way)});
  std::stable_sort(ranked.begin(), ranked.end(), [](const Ranked& a, const Ranked& b) { return a.clean.key() < b.clean.key(); });
  Json list = Json::array();
  for (const Ranked& each : ranked) {
    if (list.size() >= count) break;
    auto json = composed_json(plan, each.composed->puzzle, each.composed->way, each.clean);
    if (!json) return json.error();
    list.push_back(std::move(*json));
  }
  return list;
}

}  // namespace

Answer compose(const ComposeRequest& request, ComposeObserver* observer) {
  if (auto wrong = wrong_numbers(request)) return std::move(*wrong);
  auto ready = read_ready_plan(request.plan);
  if (!ready) return refuse(ready.error(), "plan");
  const Plan plan = std::move(ready->plan);
  const Workshop workshop(plan, std::move(ready->ground));
  ComposeState state;
  state.seed = static_cast<std::uint64_t>(request.seed.value_or(1));
  if (!request.state.empty()) {
    auto earlier = read_state(workshop.examiner(), request.state);
    if (!earlier) return refuse(earlier.error(), "state");
    if (request.seed && state.seed != earlier->seed) {
      const std::string kept = std::to_string(earlier->seed);
      return refuse(Error{ErrorCode::kBadArgument, "the state belongs to seed " + kept + ", not to " + to_text(*request.seed), "leave the seed out to go on with " + kept + ", or give another state to start afresh", {}}, "state");
    }
    state = std::move(*earlier);
  }
  const auto wanted = static_cast<std::size_t>(std::max(request.count, request.of));
  const auto most_blocks = request.most_tries == 0 ? kNoLimit : (static_cast<std::uint64_t>(request.most_tries) + kTriesInBlock - 1) / kTriesInBlock;
  Watch watch(plan, observer);
  cp::compose(workshop, state, wanted, most_blocks, request.threads, watch);
  auto puzzles = best_of(plan, state.found, static_cast<std::size_t>(request.count));
  if (!puzzles) return refuse(puzzles.error());
  Answer answer;
  const bool is_enough = state.found.size() >= wanted;
  answer.json["complete"] = is_enough;
  answer.json["seed"] = state.seed;
  answer.json["found"] = state.found.size();
  answer.json["yield"] = yield_json(state);
  answer.json["puzzles"] = std::move(*puzzles);
  answer.json["state"] = state_text(plan, state);
  if (!is_enough) answer.outcome = Outcome::kOpen;
  return answer;
}

Answer plan_check(const PlanRequest& request) {
  const auto ready = read_ready_plan(request.plan);
  if (!ready) return refuse(ready.error(), "plan");
  const Plan& plan = ready->plan;
  const Shape& shape = plan_shape();
  Answer answer;
  answer.json["title"] = plan.title;
  answer.json["idea"] = idea_text(plan.idea);
  answer.json["givens"] = Json::array({plan.least_givens, plan.most_givens});
  answer.json["may"] = cells_json(shape, ready->ground.may);
  answer.json["must"] = cells_json(shape, ready->ground.must);
  answer.json["fixed"] = candidates_json(shape, ready->ground.fixed);
  if (plan.idea.kind == PlannedIdea::Kind::kHouses) {
    const Weighing weighing = weigh(Position(shape), plan.idea.weights);
    answer.json["left"] = cells_json(shape, weighing.left);
    answer.json["right"] = cells_json(shape, weighing.right);
    answer.json["cancelled"] = cells_json(shape, weighing.cancelled);
  }
  answer.json["plan"] = to_text(plan);
  return answer;
}

}  // namespace cp::api
