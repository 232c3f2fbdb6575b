// SPDX-License-Identifier: Apache-2.0
#include "api/balance_json.h"

#include <cstdlib>

#include "api/parts.h"
#include "balance/missing_falls.h"
#include "base/text.h"
#include "speak/balance_story.h"
#include "speak/naming.h"

namespace cp::api {

namespace {

// The houses of a pan as they would be typed: "r1", "2*c4".
Json pan_json(const Shape& shape, const std::vector<Weight>& weights, int sign) {
  Json list = Json::array();
  for (const auto& [house, weight] : weights) {
    if (weight * sign < 0) continue;
    const int times = std::abs(weight);
    list.push_back((times > 1 ? to_text(times) + "*" : "") + shape.name_of(house));
  }
  return list;
}

Json tally_json(const Shape& shape, const DigitCounts& tally) {
  Json list = Json::array();
  for (const Digit digit : shape.digits()) list.push_back(tally[digit.index]);
  return list;
}

// {"r2c5": 2} for the open cells that count more than once; empty when there are none.
Json times_json(const Shape& shape, const Weighing& weighing) {
  Json times = Json::object();
  if (weighing.layers.empty()) return times;
  for (const Cell cell : weighing.layers.front()) times[shape.name_of(cell)] = weighing.multiplicity(cell);
  return times;
}

Json load_json(const Load& load) {
  Json json = Json::object();
  json["houses"] = load.houses;
  json["cells"] = load.cells;
  json["shares"] = load.shares;
  json["lemmas"] = load.lemmas;
  json["cases"] = load.cases;
  json["search"] = load.search;
  json["total"] = load.total();
  return json;
}

Json region_json(int cells, int givens) {
  Json json = Json::object();
  json["cells"] = cells;
  json["givens"] = givens;
  return json;
}

Json points_json(const Pointing& pointing) {
  using Region = Pointing::Region;
  Json json = Json::object();
  json["left"] = region_json(pointing.left_cells, pointing.left_givens);
  json["right"] = region_json(pointing.right_cells, pointing.right_givens);
  json["cancelled"] = region_json(pointing.cancelled_cells, pointing.cancelled_givens);
  std::string_view region = "none";
  if (pointing.region == Region::kLeft) region = "left";
  if (pointing.region == Region::kRight) region = "right";
  if (pointing.region == Region::kCancelled) region = "cancelled";
  json["region"] = region;
  json["hint"] = pointing.hint;
  return json;
}

struct Told {
  int level = 0;
  std::vector<Candidate> eliminations;
  std::string text;
  Load load;
};

Json put_together(const Position& position, const Weighing& weighing, int free_slack, const Told& told) {
  const Shape& shape = position.shape();
  Json json = Json::object();
  json["left"] = pan_json(shape, weighing.weights, 1);
  json["right"] = pan_json(shape, weighing.weights, -1);
  json["surplus"] = weighing.surplus;
  json["slack"] = weighing.slack;
  json["free_slack"] = free_slack;
  json["tally"] = tally_json(shape, weighing.tally);
  json["open_left"] = cells_json(shape, weighing.open_left);
  json["open_right"] = cells_json(shape, weighing.open_right);
  if (Json times = times_json(shape, weighing); !times.empty()) json["times"] = std::move(times);
  json["level"] = told.level;
  json["eliminations"] = candidates_json(shape, told.eliminations);
  json["text"] = told.text;
  json["load"] = load_json(told.load);
  json["points"] = points_json(pointing_of(position, weighing));
  return json;
}

Told tell(const Position& position, const Weighing& weighing, const LevelResult& result) {
  return {result.level, result.eliminations, balance_text(result.reason, position, result.eliminations), load_of(weighing, result.reason)};
}

// How far the levels got, in a sentence.
std::string effort_in_words(const Inference& inference, int highest) {
  if (highest < 5) return "Nothing falls up to level " + to_text(highest) + ".";
  if (!inference.is_complete) return "Nothing falls by argument, and the complete search of the open cells was given up at its limit.";
  return "Nothing falls: a complete search of the open cells strikes out no candidate either.";
}

std::string what_is_missing(const Position& position, const Weighing& weighing, const Inference& inference, int highest) {
  BalanceReason reason;
  reason.weights = weighing.weights;
  if (weighing.weights.empty()) return "Both pans are empty. Put a row, a column or a box into a pan to begin.";
  std::string text = balance_headline(reason, position.shape()) + ". ";
  if (inference.is_impossible) return text + "The open cells cannot be filled as the tally asks: the position has no solution.";
  const int open = weighing.units(weighing.open_left);
  if (open == 0 && weighing.open_right.is_empty()) return text + "No cell of the remainders is open: there is nothing left to say.";
  const int named = open - weighing.slack;
  const std::string named_text = named == open ? "all" : named == 0 ? "none" : spoken_number(named);
  text += "The open left cells hold " + counted(open, "digit") + ", and the tally names " + named_text + " of them: the slack is " + to_text(weighing.slack) + ". ";
  if (inference.forced.total > 0) text += capitalised(counted(inference.forced.total, "share")) + " of it can be named beforehand, so the free slack is " + to_text(inference.free_slack) + ". ";
  text += effort_in_words(inference, highest);
  if (inference.free_slack > 0 && inference.free_slack <= kMostFreeSlack) {
    const DigitSet digits = unsure_digits(position, weighing, inference);
    if (!digits.is_empty()) text += " What both sides may share besides: " + digit_names(digits, "or") + ". With fewer of these it could speak.";
  } else if (inference.free_slack > kMostFreeSlack) {
    text += " With more digits known, and so less slack, it could speak.";
  }
  return text;
}

}  // namespace

Json balance_json(const Position& position, const Weighing& weighing, int free_slack, const LevelResult& result) {
  return put_together(position, weighing, free_slack, tell(position, weighing, result));
}

Json balance_json(const Position& position, const Weighing& weighing, const Inference& inference, int highest) {
  const bool speaks = !inference.is_impossible && !inference.levels.empty();
  Told told;
  if (speaks) {
    told = tell(position, weighing, inference.levels.front());
  } else {
    BalanceReason reason;
    reason.weights = weighing.weights;
    told.text = what_is_missing(position, weighing, inference, highest);
    told.load = load_of(weighing, reason);
  }
  Json json = put_together(position, weighing, inference.free_slack, told);
  Json stronger = Json::array();
  for (std::size_t i = 1; speaks && i < inference.levels.size(); ++i) {
    const LevelResult& result = inference.levels[i];
    Json item = Json::object();
    item["level"] = result.level;
    item["eliminations"] = candidates_json(position.shape(), result.eliminations);
    item["text"] = balance_text(result.reason, position, result.eliminations);
    stronger.push_back(std::move(item));
  }
  json["stronger"] = std::move(stronger);
  json["impossible"] = inference.is_impossible;
  json["complete"] = inference.is_complete;
  return json;
}

Json balance_json(const Position& before, const std::vector<Candidate>& eliminations, const BalanceReason& reason) {
  const Weighing weighing = cp::weigh(before, reason.weights);
  const int free_slack = weighing.slack - forced_shares(before, weighing).total;
  return balance_json(before, weighing, free_slack, LevelResult{reason.level, eliminations, reason});
}

}  // namespace cp::api
