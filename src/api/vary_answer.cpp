// SPDX-License-Identifier: Apache-2.0
#include "api/compose_commands.h"
#include "api/pans.h"
#include "api/parts.h"
#include "balance/finder.h"
#include "compose/vary.h"
#include "grid/notation.h"
#include "path/path.h"
#include "speak/step_text.h"
#include "verify/step_check.h"

namespace cp::api {

namespace {

// The balance that the exercise is about: the one named, or the best that says something after the basics.
std::optional<WayIn> argument_of(const Position& stuck, const std::vector<Weight>& weights) {
  WayIn way(stuck);
  way.stage = Stage::kMoved;
  way.step.technique = kBalanceId;
  if (weights.empty()) {
    if (!can_find(stuck.shape())) return std::nullopt;
    const auto best = balance_step(stuck, 1);
    if (!best) return std::nullopt;
    way.step = best->step;
    way.weights = std::get_if<BalanceReason>(&way.step.reason)->weights;
    return way;
  }
  const Weighing weighing = weigh(stuck, weights);
  Inference inference = infer(stuck, weighing);
  if (inference.levels.empty()) return std::nullopt;
  way.weights = weighing.weights;
  way.step.eliminations = std::move(inference.levels.front().eliminations);
  way.step.reason = std::move(inference.levels.front().reason);
  return way;
}

// Where rows, columns and digits went: the first number says where the first one stands now.
Json clothes_json(const Transform& clothes) {
  const auto numbers = [&](const std::array<std::uint8_t, kMaxSide>& map) {
    Json list = Json::array();
    for (int i = 0; i < clothes.shape().side(); ++i) list.push_back(map[static_cast<std::size_t>(i)] + 1);
    return list;
  };
  Json json = Json::object();
  json["turned"] = clothes.transposes;
  json["rows"] = numbers(clothes.row_to);
  json["columns"] = numbers(clothes.column_to);
  json["digits"] = numbers(clothes.digit_to);
  return json;
}

Json variation_json(const Variation& variation, const Transform& clothes) {
  const Shape& shape = variation.puzzle.shape();
  Json json = Json::object();
  json["puzzle"] = givens_line(variation.puzzle);
  json["clothes"] = clothes_json(clothes);
  json["left"] = pan_text(shape, variation.way.weights, true);
  json["right"] = pan_text(shape, variation.way.weights, false);
  json["stuck"] = to_line(variation.way.stuck);
  json["eliminations"] = candidates_json(shape, variation.way.step.eliminations);
  json["text"] = step_text(variation.way.step, variation.way.stuck);
  return json;
}

}  // namespace

Answer vary(const VaryRequest& request) {
  if (auto wrong = out_of_range("count", request.count, 1, 1000)) return std::move(*wrong);
  if (auto wrong = out_of_range("seed", request.seed, 0, 2'000'000'000)) return std::move(*wrong);
  const auto puzzle = open_position(request.puzzle, false);
  if (!puzzle) return refuse(puzzle.error(), "puzzle");
  const auto stuck = after_basics(*puzzle);
  if (!stuck) return refuse(stuck.error(), "puzzle");
  std::vector<Weight> weights;
  if (!request.left.empty() || !request.right.empty()) {
    Pans pans = read_full_pans(puzzle->shape(), request.left, request.right);
    if (!pans.is_ok()) return std::move(pans.fault);
    weights = std::move(pans.weights);
  }
  const auto way = argument_of(*stuck, weights);
  if (!way) {
    return refuse(Error{ErrorCode::kNotFound, weights.empty() ? "no balance says anything where the basics stop" : "this balance says nothing where the basics stop",
                        "see counterpoise weigh PUZZLE --after-basics for what does", {}},
                  weights.empty() ? "puzzle" : "left");
  }
  Answer answer;
  answer.json["left"] = pan_text(puzzle->shape(), way->weights, true);
  answer.json["right"] = pan_text(puzzle->shape(), way->weights, false);
  answer.json["eliminations"] = candidates_json(puzzle->shape(), way->step.eliminations);
  answer.json["variations"] = Json::array();
  for (int i = 0; i < request.count; ++i) {
    const Transform clothes = Transform::random(puzzle->shape(), (static_cast<std::uint64_t>(request.seed) << 20U) + static_cast<std::uint64_t>(i));
    const auto variation = cp::vary(*puzzle, *way, clothes);
    if (!variation || !check_step(variation->way.stuck, variation->way.step).holds) {
      return refuse(Error{ErrorCode::kBug, "the argument does not hold in other clothes", "please report the puzzle and the seed", {}});
    }
    answer.json["variations"].push_back(variation_json(*variation, clothes));
  }
  return answer;
}

}  // namespace cp::api
