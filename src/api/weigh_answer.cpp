// SPDX-License-Identifier: Apache-2.0
#include "api/balance_json.h"
#include "api/commands.h"
#include "api/pans.h"
#include "api/parts.h"
#include "api/weighing_detail.h"
#include "base/text.h"
#include "grid/notation.h"

namespace cp::api {

Answer weigh(const WeighRequest& request) {
  if (auto wrong = out_of_range("level", request.level, 1, kHighestLevel)) return std::move(*wrong);
  const auto position = open_position(request.puzzle, request.after_basics);
  if (!position) return refuse(position.error(), "puzzle");
  auto weights = read_pans(position->shape(), request.left, request.right);
  if (!weights.is_ok()) return std::move(weights.fault);
  const Weighing weighing = cp::weigh(*position, weights.weights);
  const Inference inference = weighing.weights.empty() ? Inference{} : infer(*position, weighing, request.level);
  Answer answer;
  answer.json = balance_json(*position, weighing, inference, request.level);
  if (weighing.weights.empty() && !weights.weights.empty()) answer.json["text"] = "Both pans hold the same houses, so everything cancels.";
  add_account(answer.json, *position, weighing, inference);
  if (inference.levels.empty() && !inference.is_impossible) {
    answer.json["missing"] = missing_json(*position, weighing, inference, request.why);
  }
  if (request.after_basics) answer.json["position"] = to_candidate_text(*position);
  if (inference.is_impossible) answer.outcome = Outcome::kRefuted;
  return answer;
}

Answer find(const FindRequest& request) {
  if (auto wrong = out_of_range("max_slack", request.max_slack, 0, kMostFreeSlack)) return std::move(*wrong);
  if (auto wrong = out_of_range("limit", request.limit, 0, 1'000'000)) return std::move(*wrong);
  if (auto wrong = out_of_range("most_houses", request.most_houses, 0, kAnyHouses)) return std::move(*wrong);
  const auto position = open_position(request.puzzle, request.after_basics);
  if (!position) return refuse(position.error(), "puzzle");
  if (!can_find(position->shape())) {
    return refuse(Error{ErrorCode::kLimit, "balances are searched on grids up to 9x9; this one is " + std::string(position->shape().name()),
                        "name the houses: --left and --right work on every shape", {}},
                  "puzzle");
  }
  FinderOptions options;
  options.most_free_slack = request.max_slack;
  options.limit = static_cast<std::size_t>(request.limit);
  options.most_houses = request.most_houses;
  const FinderResult found = find_balances(*position, options);
  Answer answer;
  Json balances = Json::array();
  for (const FoundBalance& balance : found.balances) {
    balances.push_back(balance_json(*position, balance.weighing, balance.free_slack, balance.result));
  }
  answer.json["balances"] = std::move(balances);
  answer.json["scanned"] = found.scanned;
  answer.json["distinct"] = found.distinct;
  answer.json["examined"] = found.examined;
  answer.json["impossible"] = found.is_impossible;
  if (request.after_basics) answer.json["position"] = to_candidate_text(*position);
  if (found.is_impossible) answer.outcome = Outcome::kRefuted;
  return answer;
}

}  // namespace cp::api
