// SPDX-License-Identifier: Apache-2.0
#include "speak/step_text.h"

#include <algorithm>
#include <cstdlib>

#include "base/text.h"
#include "speak/argument_text.h"
#include "speak/balance_story.h"
#include "speak/linear_text.h"
#include "speak/naming.h"

namespace cp {

namespace {

std::string outcome(const Step& step, const Shape& shape) {
  std::vector<std::string> parts;
  if (!step.placements.empty()) parts.push_back(placements_in_words(shape, step.placements));
  if (!step.eliminations.empty()) parts.push_back(eliminations_in_words(shape, step.eliminations));
  if (parts.empty()) return "nothing changes";
  return joined(parts, "; ");
}

// ---- one candidate left ----------------------------------------------------------------------------------------------

bool sees_all_other_digits(const Position& before, Cell cell, Digit digit) {
  DigitSet seen;
  for (const Cell peer : before.shape().peers(cell)) {
    if (const auto placed = before.digit_at(peer)) seen.add(*placed);
  }
  return (before.shape().digits() - seen) == DigitSet::of(digit);
}

std::string lone_text(const LoneReason& reason, const Step& step, const Position& before) {
  const Shape& shape = before.shape();
  if (step.placements.empty()) return capitalised(outcome(step, shape)) + ".";
  const Candidate placed = step.placements[0];
  const std::string cell = shape.name_of(placed.cell);
  const std::string digit = digit_name(placed.digit);
  if (reason.constraint.kind == Constraint::Kind::kCell) {
    if (sees_all_other_digits(before, placed.cell, placed.digit)) return cell + " sees every digit but " + digit + ", so it is " + digit + ".";
    return "Only " + digit + " is left for " + cell + ", so " + cell + " is " + digit + ".";
  }
  const House house = reason.constraint.house();
  const std::string name = shape.long_name_of(house);
  if ((before.open() & shape.cells(house)).size() == 1) return cell + " is the last open cell of " + name + ", so it is " + digit + ".";
  return "In " + name + ", " + digit + " has only one place left: " + cell + " is " + digit + ".";
}

}  // namespace

std::string step_text(const Step& step, const Position& before) {
  if (const auto* lone = std::get_if<LoneReason>(&step.reason)) return lone_text(*lone, step, before);
  if (const auto* linear = std::get_if<LinearReason>(&step.reason)) return linear_text(*linear, step.eliminations, before);
  if (const auto* argument = std::get_if<ArgumentReason>(&step.reason)) return argument_text(*argument, step.eliminations, before);
  return balance_in_short(*std::get_if<BalanceReason>(&step.reason), before, step.eliminations);
}

std::string technique_words(std::string_view technique) {
  if (technique == "x-wing") return "X-wing";
  std::string words(technique);
  std::replace(words.begin(), words.end(), '-', ' ');
  return words;
}

}  // namespace cp
