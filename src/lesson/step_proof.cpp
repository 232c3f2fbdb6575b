// SPDX-License-Identifier: Apache-2.0
#include "lesson/step_proof.h"

#include <algorithm>

#include "balance/infer.h"
#include "base/text.h"
#include "path/path.h"
#include "path/some_steps.h"
#include "speak/naming.h"
#include "speak/certificate_words.h"
#include "verify/step_check.h"

namespace cp {

namespace {

constexpr std::size_t kMostPlacesLookedAt = 5'000;  // of one technique
constexpr int kCostliestUnnamed = 260;              // without a name, dearer techniques are not tried

BuildStop stop(BuildStop::Kind kind, std::string message, std::string hint) { return {kind, Error{ErrorCode::kBadArgument, std::move(message), std::move(hint), {}}, {}}; }

bool says_all(const Step& step, const Directive& wanted) {
  const auto within = [](const std::vector<Candidate>& some, const std::vector<Candidate>& all) {
    return std::all_of(some.begin(), some.end(), [&all](const Candidate& each) { return std::find(all.begin(), all.end(), each) != all.end(); });
  };
  return within(wanted.placements, step.placements) && within(wanted.eliminations, step.eliminations);
}

// Cut down to what the lesson says.
Step reduced(Step step, const Directive& wanted) {
  step.placements = wanted.placements;
  step.eliminations = wanted.eliminations;
  return step;
}

// The cheapest instance of the technique that says all this.
std::optional<Step> by_technique(const Position& position, const Technique& technique, const Directive& wanted) {
  SomeSteps found(kMostPlacesLookedAt);
  technique.find(position, found);
  const Step* best = nullptr;
  int cost = 0;
  for (const Step& step : found.steps) {
    if (!says_all(step, wanted)) continue;
    const int its_cost = measure(step, position, &technique).cost;
    if (best == nullptr || its_cost < cost) {
      best = &step;
      cost = its_cost;
    }
  }
  if (best == nullptr) return std::nullopt;
  return reduced(*best, wanted);
}

// By the weakest level of reasoning that says all this.
std::optional<Step> by_balance(const Position& position, const NamedBalance& balance, const Directive& wanted) {
  const Inference inference = infer(position, weigh(position, balance.weights));
  for (const LevelResult& level : inference.levels) {
    Step step{kBalanceId, {}, level.eliminations, level.reason};
    if (!says_all(step, wanted) || !wanted.placements.empty()) continue;
    Step cut = reduced(step, wanted);
    // The reason is trimmed to all that its level proves; where a part alone does not replay, the whole stays.
    return check_step(position, cut).holds ? cut : step;
  }
  return std::nullopt;
}

std::optional<BuildStop> misfit(const Position& position, const Directive& wanted) {
  const Shape& shape = position.shape();
  for (const Candidate& placed : wanted.placements) {
    if (const auto digit = position.digit_at(placed.cell)) {
      return stop(BuildStop::Kind::kUnfit, shape.name_of(placed.cell) + " holds " + digit_name(*digit) + " already", "leave the step out, or look at what was applied before");
    }
  }
  for (const Candidate& gone : wanted.eliminations) {
    if (position.is_placed(gone.cell) || !position.has(gone)) {
      return stop(BuildStop::Kind::kUnfit, "there is no " + digit_name(gone.digit) + " in " + shape.name_of(gone.cell) + " any more", "leave it out, or look at what was applied before");
    }
  }
  return std::nullopt;
}

std::optional<BuildStop> contradiction(const Board& board, const Directive& wanted) {
  if (!board.truth) return std::nullopt;
  const bool is_false = std::any_of(wanted.placements.begin(), wanted.placements.end(), [&board](const Candidate& each) { return !board.truth->has(each); }) ||
                        std::any_of(wanted.eliminations.begin(), wanted.eliminations.end(), [&board](const Candidate& each) { return board.truth->has(each); });
  if (!is_false) return std::nullopt;
  return stop(BuildStop::Kind::kRefuted, "this step is false: " + conclusions_text(board.position.shape(), wanted.placements, wanted.eliminations) + " contradicts the solution",
              "check the cells and the digits");
}

StepProof checked(std::vector<ProvenStep> steps) {
  for (const ProvenStep& each : steps) {
    if (each.is_by_search) continue;
    if (const CheckResult replay = check_step(each.before, each.step); !replay.holds) {
      return stop(BuildStop::Kind::kBug, "a step of " + std::string(each.step.technique) + " does not verify: " + replay.why, "please report this lesson");
    }
  }
  return steps;
}

// What the named technique or balance does say here, for a hint.
std::string offered(const Position& position, const std::vector<Candidate>& eliminations, const std::vector<Candidate>& placements) {
  if (eliminations.empty() && placements.empty()) return "here it says nothing at all";
  return "here it gives " + conclusions_text(position.shape(), placements, eliminations);
}

StepProof by_name(const Board& board, const Directive& wanted, const Vocabulary& names) {
  const Position& position = board.position;
  std::optional<Step> found;
  std::string hint;
  if (const NamedBalance* balance = names.balance(wanted.name)) {
    found = by_balance(position, *balance, wanted);
    if (!found) {
      const Inference inference = infer(position, weigh(position, balance->weights));
      hint = offered(position, inference.levels.empty() ? std::vector<Candidate>() : inference.levels.back().eliminations, {});
    }
  } else {
    const Technique& technique = **find_technique(wanted.name);
    found = by_technique(position, technique, wanted);
    if (!found) {
      FirstStep first;
      technique.find(position, first);
      hint = offered(position, first.first.eliminations, first.first.placements);
    }
  }
  if (!found) {
    return stop(BuildStop::Kind::kOpen, "'" + wanted.name + "' does not give " + conclusions_text(position.shape(), wanted.placements, wanted.eliminations) + " at this position",
                hint + "; without 'by' anything that proves it will do");
  }
  return checked({{position, std::move(*found), {}, false}});
}

std::optional<Step> by_anything(const Position& position, const Directive& wanted, const Vocabulary& names) {
  for (const Technique* technique : whole_catalogue().techniques) {
    if (technique->cost > kCostliestUnnamed) break;
    if (auto step = by_technique(position, *technique, wanted)) return step;
  }
  for (const NamedBalance& balance : names.balances) {
    if (auto step = by_balance(position, balance, wanted)) return step;
  }
  return std::nullopt;
}

Claim claim_of(const Candidate& candidate, bool is_placed, const Shape& shape) {
  Claim claim;
  claim.kind = Claim::Kind::kValues;
  claim.left = {{candidate.cell, 1}};
  claim.digits = is_placed ? DigitSet::of(candidate.digit) : shape.digits() - DigitSet::of(candidate.digit);
  return claim;
}

// One conclusion as a claim on the position and all rules.
StepProof as_claim(const Board& board, const Candidate& candidate, bool is_placed) {
  const Shape& shape = board.position.shape();
  Ground ground;
  ground.houses = Footing::all_rules(shape).houses;
  const auto answer = judge_claim(board, claim_of(candidate, is_placed, shape), ground);
  const std::string words = conclusions_text(shape, is_placed ? std::vector<Candidate>{candidate} : std::vector<Candidate>(), is_placed ? std::vector<Candidate>() : std::vector<Candidate>{candidate});
  if (!answer || answer->verdict != Verdict::kProved || !answer->certificate) {
    return stop(BuildStop::Kind::kOpen, "no proof of " + words + " was found at this position", "apply something before it, or name what it follows from");
  }
  Step step{"claim", {}, {}, LoneReason{Constraint::of(candidate.cell)}};
  (is_placed ? step.placements : step.eliminations).push_back(candidate);
  return std::vector<ProvenStep>{{board.position, std::move(step), certificate_words(shape, *answer->certificate, true).spoken, true}};
}

// Each conclusion by itself, in order.
StepProof one_by_one(Board board, const Directive& wanted, const Vocabulary& names) {
  std::vector<ProvenStep> all;
  const auto take = [&](const Candidate& candidate, bool is_placed) -> std::optional<BuildStop> {
    Directive one;
    (is_placed ? one.placements : one.eliminations).push_back(candidate);
    if (auto step = by_anything(board.position, one, names)) {
      all.push_back({board.position, std::move(*step), {}, false});
    } else {
      StepProof proof = as_claim(board, candidate, is_placed);
      if (auto* fault = std::get_if<BuildStop>(&proof)) return std::move(*fault);
      all.push_back(std::move(std::get<std::vector<ProvenStep>>(proof).front()));
    }
    apply(all.back().step, board.position);
    return std::nullopt;
  };
  for (const Candidate& each : wanted.placements) {
    if (auto fault = take(each, true)) return std::move(*fault);
  }
  for (const Candidate& each : wanted.eliminations) {
    if (!board.position.has(each)) continue;
    if (auto fault = take(each, false)) return std::move(*fault);
  }
  return checked(std::move(all));
}

}  // namespace

StepProof prove_step(const Board& board, const Directive& directive, const Vocabulary& names) {
  if (auto fault = misfit(board.position, directive)) return std::move(*fault);
  if (auto fault = contradiction(board, directive)) return std::move(*fault);
  if (!directive.name.empty()) return by_name(board, directive, names);
  if (auto step = by_anything(board.position, directive, names)) return checked({{board.position, std::move(*step), {}, false}});
  return one_by_one(board, directive, names);
}

StepProof prove_run(const Board& board, const std::vector<std::string>& techniques) {
  PathOptions options;
  options.only = techniques;
  const auto path = find_path(board.position, options);
  if (!path) return stop(BuildStop::Kind::kUnfit, path.error().message, path.error().hint);
  if (path->end == PathEnd::kImpossible) return stop(BuildStop::Kind::kRefuted, "this position has no solution", "look at what was applied before");
  std::vector<ProvenStep> steps;
  for (const PathStep& at : path->steps) {
    for (const Candidate& placed : at.step.placements) {
      if (board.truth && !board.truth->has(placed)) return stop(BuildStop::Kind::kBug, "a placement contradicts the solution", "please report this lesson");
    }
    steps.push_back({at.before, at.step, at.text, false});
  }
  return checked(std::move(steps));
}

}  // namespace cp
