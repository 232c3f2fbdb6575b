// SPDX-License-Identifier: Apache-2.0
// Judges what techniques say about one position: against all solutions, against a second opinion, against the replayed
// reason, and against what the same technique says when the position has been printed and read again.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "audit/audit_states.h"
#include "base/text.h"
#include "grid/notation.h"
#include "oracle/cadical_oracle.h"
#include "oracle/plain_search.h"
#include "oracle/reason_replay.h"

namespace cp::audit {

// What is counted for one technique.
struct Tally {
  long long firings = 0;
  long long conclusions = 0;
  long long wrong = 0;
  long long second_opinions = 0;
};

// Lines and cases of an argument, appended.
template <typename Name>
void add_argument(const Argument& argument, const Name& name, std::string& text) {
  for (const Line& line : argument.lines) {
    text += " ;";
    for (const LinearTerm& term : line.terms) text += " " + to_text(term.multiplier) + "*" + name(term.constraint);
  }
  if (argument.split) text += " split " + name(*argument.split);
  for (const Argument& each : argument.cases) {
    text += " {";
    add_argument(each, name, text);
    text += " }";
  }
}

// Everything a step says, as text: for comparing and for reports.
inline std::string step_as_text(const Shape& shape, const Step& step) {
  std::string text(step.technique);
  for (const Candidate& each : step.placements) text += " " + shape.name_of(each.cell) + "=" + Shape::name_of(each.digit);
  for (const Candidate& each : step.eliminations) text += " " + shape.name_of(each.cell) + "!=" + Shape::name_of(each.digit);
  const auto name = [&](const Constraint& fact) {
    if (fact.kind == Constraint::Kind::kPattern) return "pattern" + to_text(fact.place);
    return fact.kind == Constraint::Kind::kCell ? shape.name_of(fact.cell()) : shape.name_of(fact.house()) + ":" + Shape::name_of(fact.digit);
  };
  text += " because";
  if (const auto* argument = std::get_if<ArgumentReason>(&step.reason)) add_argument(argument->argument, name, text);
  if (const auto* lone = std::get_if<LoneReason>(&step.reason)) text += " " + name(lone->constraint);
  if (const auto* linear = std::get_if<LinearReason>(&step.reason)) {
    for (const LinearTerm& term : linear->terms) text += " " + to_text(term.multiplier) + "*" + name(term.constraint);
  }
  return text;
}

// Per cell the digits of some solution. Empty when there are none or more than 10 000.
inline std::optional<std::array<DigitSet, kMaxCells>> possible_digits(const Position& position, std::size_t& count) {
  const SolutionList all = solutions(position, kMostSolutions + 1);
  count = all.grids.size();
  if (count == 0 || count > kMostSolutions) return std::nullopt;
  std::array<DigitSet, kMaxCells> possible{};
  for (const FullGrid& grid : all.grids) {
    for (const Cell cell : position.shape().all_cells()) possible[cell.index].add(grid.at(cell));
  }
  return possible;
}

// Does the step place or strike something that some solution contradicts?
inline bool is_wrong(const Step& step, const std::array<DigitSet, kMaxCells>& possible) {
  for (const Candidate& placed : step.placements) {
    if (possible[placed.cell.index] != DigitSet::of(placed.digit)) return true;
  }
  for (const Candidate& struck : step.eliminations) {
    if (possible[struck.cell.index].has(struck.digit)) return true;
  }
  return false;
}

class Judge {
 public:
  // Asks the second opinion about every `sample`-th state.
  explicit Judge(int sample) : sample_(sample), tallies_(catalogue().size()) {}

  // False when something is wrong; `faults` then says what. Techniques beyond the basics have their turn at every `every`-th state.
  bool look_at(const AuditState& state, int every) {
    return look_at(state, [&](const Technique& technique) { return is_its_turn(technique, state.position, seen_, every); });
  }
  // The same for the techniques that the predicate wants.
  template <typename Wanted>
  bool look_at(const AuditState& state, Wanted wants);

  [[nodiscard]] const std::vector<Tally>& tallies() const { return tallies_; }
  [[nodiscard]] const std::vector<std::string>& faults() const { return faults_; }
  [[nodiscard]] long long states(Origin origin) const { return states_[static_cast<std::size_t>(origin)]; }
  [[nodiscard]] long long states_with_several_solutions() const { return several_; }
  [[nodiscard]] long long skipped() const { return skipped_; }

 private:
  void fault(const Position& position, const std::string& what) {
    faults_.push_back(what + "\n" + to_candidate_text(position));
  }
  void check_truth(const Position& position, const Step& step, const std::array<DigitSet, kMaxCells>& possible, Tally& tally);
  void check_second_opinion(const Position& position, const Step& step, oracle::CadicalOracle& cadical, Tally& tally);
  void check_reload(const Position& position, const Technique& technique, const std::vector<Step>& steps);

  int sample_;
  std::vector<Tally> tallies_;
  std::vector<std::string> faults_;
  std::array<long long, 3> states_{};
  long long seen_ = 0;
  long long several_ = 0;
  long long skipped_ = 0;
};

inline void Judge::check_truth(const Position& position, const Step& step, const std::array<DigitSet, kMaxCells>& possible, Tally& tally) {
  ++tally.firings;
  tally.conclusions += static_cast<long long>(step.placements.size() + step.eliminations.size());
  if (is_wrong(step, possible)) {
    ++tally.wrong;
    fault(position, "wrong: " + step_as_text(position.shape(), step));
  }
  if (const std::string why = oracle::replay_fault(position, step); !why.empty()) fault(position, why + ": " + step_as_text(position.shape(), step));
}

inline void Judge::check_second_opinion(const Position& position, const Step& step, oracle::CadicalOracle& cadical, Tally& tally) {
  bool is_wrong = false;
  for (const Candidate& struck : step.eliminations) is_wrong = is_wrong || cadical.is_possible(struck);
  for (const Candidate& placed : step.placements) {
    is_wrong = is_wrong || !cadical.is_possible(placed);
    for (const Digit other : position.candidates(placed.cell) - DigitSet::of(placed.digit)) is_wrong = is_wrong || cadical.is_possible({placed.cell, other});
  }
  tally.second_opinions += static_cast<long long>(step.placements.size() + step.eliminations.size());
  if (is_wrong) fault(position, "wrong for CaDiCaL: " + step_as_text(position.shape(), step));
}

inline void Judge::check_reload(const Position& position, const Technique& technique, const std::vector<Step>& steps) {
  const auto reloaded = parse_position(to_candidate_text(position));
  if (!reloaded || !(*reloaded == position)) return fault(position, "the position is not the same after printing and reading");
  const std::vector<Step> again = steps_of(technique, *reloaded);
  bool same = again.size() == steps.size();
  for (std::size_t i = 0; same && i < steps.size(); ++i) same = step_as_text(position.shape(), steps[i]) == step_as_text(position.shape(), again[i]);
  if (!same) fault(position, std::string(technique.id) + " says something else after printing and reading");
  FirstStep first;
  technique.find(position, first);
  const bool first_agrees = steps.empty() ? !first.found : step_as_text(position.shape(), first.first) == step_as_text(position.shape(), steps[0]);
  if (!first_agrees) fault(position, std::string(technique.id) + " does not stop at its first step");
}

template <typename Wanted>
bool Judge::look_at(const AuditState& state, Wanted wants) {
  const std::size_t faults_before = faults_.size();
  const Position& position = state.position;
  std::size_t count = 0;
  const auto possible = possible_digits(position, count);
  if (!possible) {
    ++skipped_;
    return true;
  }
  ++states_[static_cast<std::size_t>(state.origin)];
  several_ += count > 1 ? 1 : 0;
  std::optional<oracle::CadicalOracle> cadical;
  ++seen_;
  if (seen_ % sample_ == 0) {
    cadical.emplace(position);
    if (count <= 50 && oracle::plain_solutions(position, count + 1).size() != count) fault(position, "the plain search counts other solutions");
  }
  const bool is_proper_puzzle = count == 1 && has_proper_givens(position);
  for (std::size_t i = 0; i < catalogue().size(); ++i) {
    if (!wants(catalogue()[i]) || (catalogue()[i].needs_unique && !is_proper_puzzle)) continue;
    const std::vector<Step> steps = steps_of(catalogue()[i], position);
    for (const Step& step : steps) {
      if (step.technique != catalogue()[i].id) fault(position, "a step of " + std::string(catalogue()[i].id) + " bears another id");
      check_truth(position, step, *possible, tallies_[i]);
      if (cadical) check_second_opinion(position, step, *cadical, tallies_[i]);
    }
    check_reload(position, catalogue()[i], steps);
  }
  return faults_.size() == faults_before;
}

}  // namespace cp::audit
