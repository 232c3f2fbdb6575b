// SPDX-License-Identifier: Apache-2.0
#include "scan/survey_puzzle.h"

#include <algorithm>

#include "deduce/basics.h"
#include "exact/solve.h"
#include "grid/canonical_form.h"
#include "grid/notation.h"
#include "path/needed.h"

namespace cp {

namespace {

constexpr std::size_t kMostNotes = 3;  // balances kept in a record
constexpr std::string_view kNamesOfDepths[] = {"form", "basics", "balances", "full"};

BalanceNote note_of(const Shape& shape, const FoundBalance& found) {
  BalanceNote note;
  note.left = pan_text(shape, found.weighing.weights, true);
  note.right = pan_text(shape, found.weighing.weights, false);
  note.kind = kind_of(shape, found.weighing.weights);
  note.surplus = found.weighing.surplus;
  note.slack = found.weighing.slack;
  note.free_slack = found.free_slack;
  note.level = found.result.level;
  note.load = found.load.total();
  note.eliminations = static_cast<int>(found.result.eliminations.size());
  return note;
}

class Surveyor {
 public:
  Surveyor(const Position& puzzle, const SurveyWish& wish) : puzzle_(puzzle), wish_(wish) { record_.depth = wish.depth; }

  SurveyRecord run() {
    look_at_form();
    if (!record_.is_proper() || wish_.depth == SurveyDepth::kForm) return std::move(record_);
    Position after = puzzle_;
    run_basics(after);
    record_.open_after_basics = after.open().size();
    const bool weighs = wish_.depth >= SurveyDepth::kBalances && !after.is_complete() && can_find(after.shape());
    if (weighs) note_balances(find(after, kMostNotes));
    if (wish_.depth == SurveyDepth::kFull) look_at_whole_catalogue();
    else look_at_plain_path();
    return std::move(record_);
  }

 private:
  void look_at_form() {
    const Shape& shape = puzzle_.shape();
    record_.puzzle = to_line(puzzle_);
    record_.givens = puzzle_.placed().size();
    const HowMany solutions = how_many(puzzle_);
    record_.solutions = solutions == HowMany::kOne ? "one" : solutions == HowMany::kNone ? "none" : "many";
    if (!has_canonical_form(shape)) return;
    CanonicalForm form = canonical_form(puzzle_);
    record_.canonical = std::move(form.text);
    record_.symmetries = form.symmetries;
  }

  FinderResult find(const Position& position, std::size_t limit) {
    FinderOptions options;
    options.limit = limit;
    if (wish_.depth < SurveyDepth::kFull) {
      options.most_free_slack = 0;
      options.most_raw_slack = 0;
    }
    return find_balances(position, options, kept_);
  }

  void note_balances(const FinderResult& found) {
    if (!found.balances.empty()) first_balance_ = found.balances.front();
    for (const FoundBalance& balance : found.balances) record_.balances.push_back(note_of(puzzle_.shape(), balance));
  }

  // Basics while they go on, a balance where they end: no balance costs as little as the dearest of the basics.
  void look_at_plain_path() {
    static const Selection kBasics = select_techniques(basic_families(), {}).value();
    Path path(puzzle_);
    Position& position = path.end_position;
    bool has_weighed = false;
    while (!position.is_complete() && !position.has_clash()) {
      std::optional<PathStep> step = easiest_step(position, kBasics, 0);
      if (!step && wish_.depth == SurveyDepth::kBalances) {
        step = next_balance(position, !has_weighed);
        has_weighed = true;
      }
      if (!step) break;
      apply(step->step, position);
      path.steps.push_back(std::move(*step));
    }
    path.end = position.has_clash() ? PathEnd::kImpossible : position.is_complete() ? PathEnd::kSolved : PathEnd::kStuck;
    note_path(path);
    if (path.end == PathEnd::kSolved && has_weighed) record_.needed.emplace_back(kBalanceId);
    record_.asked_needed = true;
  }

  std::optional<PathStep> next_balance(const Position& position, bool is_first) {
    if (!is_first) {
      const FinderResult found = find(position, 1);
      first_balance_.reset();
      if (!found.balances.empty()) first_balance_ = found.balances.front();
    }
    if (!first_balance_) return std::nullopt;
    PathStep step{position, to_step(*first_balance_), {}, 0, {}};
    step.measure = measure(step.step, position, nullptr);
    return step;
  }

  void look_at_whole_catalogue() {
    const auto path = find_path(puzzle_, {});
    const PathMeasure all = note_path(*path);
    record_.path->narrow = all.narrow;
    record_.path->open_tenths = all.open_tenths;
    if (!wish_.ask_needed || path->end != PathEnd::kSolved) return;
    record_.asked_needed = true;
    for (const std::string& name : doubtful_names()) {
      const auto needed = is_needed(puzzle_, {{name}, {}, 1});
      if (needed->answer == Needed::Answer::kYes) record_.needed.push_back(name);
    }
  }

  // What the path uses beyond the basics: only that can be needed.
  [[nodiscard]] std::vector<std::string> doubtful_names() const {
    std::vector<std::string> names;
    const auto add = [&](std::string_view name) {
      if (std::find(names.begin(), names.end(), name) == names.end()) names.emplace_back(name);
    };
    for (const TechniqueUse& use : record_.path->techniques) {
      if (use.technique == kBalanceId) {
        add(kBalanceId);
        continue;
      }
      const Technique& technique = **find_technique(use.technique);
      if (!is_basic_family(technique.family)) add(technique.family);
      if (technique.needs_unique) add(kUniquenessGroup);
    }
    return names;
  }

  PathMeasure note_path(const Path& path) {
    SurveyPath& note = record_.path.emplace();
    const PathMeasure all = measure(path);
    note.end = path.end == PathEnd::kSolved ? "solved" : path.end == PathEnd::kStuck ? "stuck" : "impossible";
    note.steps = all.steps;
    note.hardest = all.hardest;
    note.technique = all.technique;
    note.effort = all.effort;
    note.beyond_singles = all.beyond_singles;
    bool is_after_hardest = false;
    for (const PathStep& step : path.steps) {
      const std::string technique(step.step.technique);
      const auto use = std::find_if(note.techniques.begin(), note.techniques.end(), [&](const TechniqueUse& one) { return one.technique == technique; });
      if (use == note.techniques.end()) note.techniques.push_back({technique, 1});
      else ++use->steps;
      if (is_after_hardest && std::find(note.tail.begin(), note.tail.end(), technique) == note.tail.end()) note.tail.push_back(technique);
      is_after_hardest = is_after_hardest || step.measure.cost == all.hardest;
    }
    return all;
  }

  const Position& puzzle_;
  const SurveyWish& wish_;
  KeptBalances kept_;
  std::optional<FoundBalance> first_balance_;  // of the position asked last
  SurveyRecord record_;
};

}  // namespace

std::string_view name_of(SurveyDepth depth) { return kNamesOfDepths[static_cast<std::size_t>(depth)]; }

std::optional<SurveyDepth> survey_depth_named(std::string_view name) {
  const auto at = std::find(std::begin(kNamesOfDepths), std::end(kNamesOfDepths), name);
  if (at == std::end(kNamesOfDepths)) return std::nullopt;
  return static_cast<SurveyDepth>(at - std::begin(kNamesOfDepths));
}

std::string kind_of(const Shape& shape, const std::vector<Weight>& weights) {
  static constexpr std::string_view kWords[] = {"rows", "columns", "boxes"};
  // Which kinds stand in each pan, as three bits, rows lowest.
  unsigned left = 0;
  unsigned right = 0;
  for (const Weight& weight : weights) (weight.weight > 0 ? left : right) |= 1U << static_cast<unsigned>(shape.kind(weight.house));
  const auto said = [](unsigned kinds) {
    std::string text;
    for (unsigned kind = 0; kind < 3; ++kind) {
      if (((kinds >> kind) & 1U) != 0) text += (text.empty() ? "" : " and ") + std::string(kWords[kind]);
    }
    return text.empty() ? std::string("nothing") : text;
  };
  // The pan that has rows comes first; then the one that has columns; then the one with more kinds.
  const auto key = [](unsigned kinds) { return ((kinds & 1U) << 3U) | ((kinds & 2U) << 1U) | (kinds & 4U) >> 1U; };
  if (key(left) < key(right)) std::swap(left, right);
  return said(left) + " against " + said(right);
}

SurveyRecord survey_puzzle(const Position& puzzle, const SurveyWish& wish) { return Surveyor(puzzle, wish).run(); }

}  // namespace cp
