// SPDX-License-Identifier: Apache-2.0
#include "balance/weighing.h"

#include <algorithm>
#include <map>

#include "base/text.h"

namespace cp {

namespace {

constexpr int kMaxWeight = 99;  // of one pan, all factors together: more than anyone says aloud, far from any overflow

std::vector<Weight> merged(const std::vector<Weight>& weights) {
  std::map<House, int> sums;
  for (const Weight& weight : weights) sums[weight.house] += weight.weight;
  std::vector<Weight> result;
  for (const auto& [house, sum] : sums) {
    if (sum != 0) result.push_back({house, sum});
  }
  return result;
}

void add_layer(Weighing& weighing, Cell cell, int multiplicity) {
  while (static_cast<int>(weighing.layers.size()) < multiplicity - 1) weighing.layers.emplace_back();
  for (int k = 0; k < multiplicity - 1; ++k) weighing.layers[static_cast<std::size_t>(k)].add(cell);
}

}  // namespace

int Weighing::multiplicity(Cell cell) const {
  int total = 1;
  for (const CellSet& layer : layers) total += layer.has(cell) ? 1 : 0;
  return total;
}

Weighing weigh(const Position& position, const std::vector<Weight>& weights) {
  const Shape& shape = position.shape();
  Weighing weighing;
  weighing.weights = merged(weights);
  std::array<int, kMaxCells> weight_of{};
  CellSet touched;
  for (const auto& [house, weight] : weighing.weights) {
    weighing.surplus += weight;
    touched |= shape.cells(house);
    for (const Cell cell : shape.cells(house)) weight_of[cell.index] += weight;
  }
  for (const Cell cell : touched) {
    const int weight = weight_of[cell.index];
    if (weight == 0) {
      weighing.cancelled.add(cell);
      continue;
    }
    (weight > 0 ? weighing.left : weighing.right).add(cell);
    if (const auto digit = position.digit_at(cell)) {
      (weight > 0 ? weighing.known_left : weighing.known_right)[digit->index] += std::abs(weight);
    } else {
      (weight > 0 ? weighing.open_left : weighing.open_right).add(cell);
      add_layer(weighing, cell, std::abs(weight));
    }
  }
  weighing.slack = weighing.units(weighing.open_left);
  for (const Digit digit : shape.digits()) {
    weighing.tally[digit.index] = weighing.surplus + weighing.known_right[digit.index] - weighing.known_left[digit.index];
    weighing.slack -= weighing.asked_left(digit);
  }
  return weighing;
}

namespace {

// Reads "3*" before a house name; 1 when there is none.
Result<int> read_factor(std::string_view& item) {
  const auto star = item.find('*');
  if (star == std::string_view::npos) return 1;
  int factor = 0;
  for (const char character : trimmed(item.substr(0, star))) {
    if (character < '0' || character > '9' || factor > kMaxWeight) {
      factor = 0;
      break;
    }
    factor = factor * 10 + (character - '0');
  }
  if (factor < 1 || factor > kMaxWeight) {
    return Error{ErrorCode::kBadArgument, "'" + std::string(item) + "' has no usable factor before '*'",
                 "write a whole number from 1 to 99, as in 2*r3", {}};
  }
  item = trimmed(item.substr(star + 1));
  return factor;
}

}  // namespace

Result<std::vector<Weight>> parse_pan(const Shape& shape, std::string_view text, bool is_left) {
  std::vector<Weight> weights;
  constexpr std::string_view kBetween = ",; +\t\n";
  if (trimmed(text) == kEmptyPan) return weights;
  int total = 0;
  std::size_t at = 0;
  while (at < text.size()) {
    if (kBetween.find(text[at]) != std::string_view::npos) {
      ++at;
      continue;
    }
    const std::size_t end = std::min(text.find_first_of(kBetween, at), text.size());
    const TextSpan where{at, end - at, 1, static_cast<int>(at) + 1};
    std::string_view item = text.substr(at, end - at);
    at = end;
    auto factor = read_factor(item);
    auto house = factor ? shape.parse_house(item) : Result<House>(factor.error());
    if (!house) {
      Error error = house.error();
      error.where = where;
      return error;
    }
    total += *factor;
    if (total > kMaxWeight) {
      return Error{ErrorCode::kBadArgument, "the pan holds more than " + to_text(kMaxWeight) + " houses, counted with their factors",
                   "take houses away or use smaller factors", where};
    }
    weights.push_back({*house, is_left ? *factor : -*factor});
  }
  if (weights.empty() && !trimmed(text).empty()) {
    return Error{ErrorCode::kBadArgument, "'" + std::string(text) + "' names no house", "name houses as in r1,r2, or write " + std::string(kEmptyPan), {0, text.size(), 1, 1}};
  }
  return weights;
}

Result<std::vector<Weight>> parse_pans(const Shape& shape, std::string_view left, std::string_view right) {
  std::vector<Weight> weights;
  for (const auto& [pan, is_left] : {std::pair{left, true}, std::pair{right, false}}) {
    const auto read = parse_pan(shape, pan, is_left);
    if (!read) return read.error();
    weights.insert(weights.end(), read->begin(), read->end());
  }
  if (weights.empty()) {
    return Error{ErrorCode::kBadArgument, "both pans are empty", "name at least one house, as in r1,r2 against c1,c2", {}};
  }
  return weights;
}

std::string pan_text(const Shape& shape, const std::vector<Weight>& weights, bool left) {
  std::vector<std::string> items;
  for (const auto& [house, weight] : weights) {
    if ((weight > 0) != left) continue;
    const int times = std::abs(weight);
    items.push_back((times > 1 ? to_text(times) + "*" : "") + shape.name_of(house));
  }
  return joined(items, ",");
}

}  // namespace cp
