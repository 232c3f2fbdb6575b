// SPDX-License-Identifier: Apache-2.0
#include "api/weighing_detail.h"

#include <algorithm>

#include "api/parts.h"
#include "base/text.h"
#include "speak/naming.h"

namespace cp::api {

namespace {

constexpr std::size_t kMostChanges = 5;

// One digit in one pan: how often it is known there, its places among the open cells, and how many copies these hold.
struct PanAccount {
  int known = 0;
  CellSet places;
  int least = 0;
  int most = 0;
};

Json pan_account_json(const Shape& shape, const PanAccount& account) {
  Json json = Json::object();
  json["known"] = account.known;
  json["least"] = account.least;
  json["most"] = account.most;
  json["cells"] = cells_json(shape, account.places);
  return json;
}

// Shares of a digit: known beforehand, and the most that places and free slack allow.
struct ShareRange {
  int least = 0;
  int most = 0;
};

Json digit_json(const Position& position, const Weighing& weighing, const Inference& inference, Digit digit) {
  const CellSet& places = position.places(digit);
  PanAccount left{weighing.known_left[digit.index], places & weighing.open_left};
  PanAccount right{weighing.known_right[digit.index], places & weighing.open_right};
  const int asked_left = weighing.asked_left(digit);
  const int asked_right = weighing.asked_right(digit);
  const int room = std::min(weighing.units(left.places) - asked_left, weighing.units(right.places) - asked_right);
  ShareRange shares{inference.forced.least[digit.index], std::min(room, inference.forced.least[digit.index] + inference.free_slack)};
  shares.most = std::max(shares.most, shares.least);
  left.least = asked_left + shares.least;
  left.most = asked_left + shares.most;
  right.least = asked_right + shares.least;
  right.most = asked_right + shares.most;
  Json json = Json::object();
  json["digit"] = digit.index + 1;
  json["tally"] = weighing.tally[digit.index];
  json["left"] = pan_account_json(position.shape(), left);
  json["right"] = pan_account_json(position.shape(), right);
  return json;
}

std::string_view kind_of_silence(const Weighing& weighing, const Inference& inference) {
  if (weighing.weights.empty()) return "no-houses";
  if (weighing.open_left.is_empty() && weighing.open_right.is_empty()) return "no-open-cells";
  if (!inference.is_complete) return "given-up";
  return inference.free_slack > 0 ? "slack" : "nothing-new";
}

Json change_json(const Shape& shape, const MissingFall& fall) {
  Json json = Json::object();
  json["cell"] = shape.name_of(fall.missing.cell);
  json["digit"] = fall.missing.digit.index + 1;
  json["level"] = fall.result.level;
  json["eliminations"] = candidates_json(shape, fall.result.eliminations);
  json["text"] = "If " + shape.name_of(fall.missing.cell) + " could not hold " + a_digit(fall.missing.digit) + ", this would follow: " +
                 eliminations_in_words(shape, fall.result.eliminations) + ".";
  return json;
}

}  // namespace

void add_account(Json& answer, const Position& position, const Weighing& weighing, const Inference& inference) {
  const Shape& shape = position.shape();
  answer["remainder_left"] = cells_json(shape, weighing.left);
  answer["remainder_right"] = cells_json(shape, weighing.right);
  answer["cancelled"] = cells_json(shape, weighing.cancelled);
  Json digits = Json::array();
  for (const Digit digit : shape.digits()) digits.push_back(digit_json(position, weighing, inference, digit));
  answer["digits"] = std::move(digits);
}

Json missing_json(const Position& position, const Weighing& weighing, const Inference& inference, bool look_for_changes) {
  Json json = Json::object();
  json["kind"] = kind_of_silence(weighing, inference);
  Json unsure = Json::array();
  for (const Digit digit : unsure_digits(position, weighing, inference)) unsure.push_back(digit.index + 1);
  json["unsure"] = std::move(unsure);
  if (!look_for_changes) return json;
  Json changes = Json::array();
  for (const MissingFall& fall : missing_falls(position, weighing, inference, kMostChanges)) changes.push_back(change_json(position.shape(), fall));
  json["changes"] = std::move(changes);
  return json;
}

}  // namespace cp::api
