// SPDX-License-Identifier: Apache-2.0
#include "compose/judge.h"

#include <algorithm>

#include "base/text.h"
#include "exact/minimal.h"
#include "exact/solve.h"
#include "speak/naming.h"
#include "speak/step_text.h"

namespace cp {

namespace {

constexpr std::size_t kMostShortcuts = 3;

class Judge {
 public:
  Judge(const Examiner& examiner, const PlanGround& ground, const Position& puzzle) : examiner_(examiner), plan_(examiner.plan()), ground_(ground), puzzle_(from_givens(puzzle, puzzle.givens())) {}

  Judgement run() {
    judge_layout();
    const HowMany solutions = puzzle_.has_clash() ? HowMany::kNone : how_many(puzzle_);
    say("proper", solutions == HowMany::kOne, solutions == HowMany::kOne ? "It has exactly one solution." : solutions == HowMany::kNone ? "It has no solution." : "It has more than one solution.");
    if (solutions == HowMany::kOne) {
      judgement_.way = examiner_.follow(puzzle_, plan_.idea.weights);
      judge_way(*judgement_.way);
      note_shortcuts(*judgement_.way);
    } else {
      not_asked("before");
      if (!plan_.without.empty()) not_asked("without");
      not_asked("idea");
      not_asked("after");
      judge_looks(plan_.idea.weights);
      if (plan_.minimal) not_asked("minimal");
    }
    if (judgement_.is_met()) judgement_.clean = cleanness_of(plan_, puzzle_, *judgement_.way);
    return std::move(judgement_);
  }

  Judgement points_of(const WayIn& way) {
    judge_layout();
    say("proper", true, "");
    judge_way(way);
    return std::move(judgement_);
  }

 private:
  void say(std::string name, bool is_met, std::string text) { judgement_.points.push_back({std::move(name), is_met, true, std::move(text)}); }
  void not_asked(std::string name) { judgement_.points.push_back({std::move(name), false, false, "Not asked: an earlier point is not met."}); }
  [[nodiscard]] std::string names(const CellSet& cells) const { return cell_names(plan_shape(), cells); }

  // What can be seen on the paper. Looks at the regions of a balance wait until it is known.
  void judge_layout() {
    const CellSet& givens = puzzle_.givens();
    const int count = givens.size();
    const std::string wanted = plan_.least_givens == plan_.most_givens ? to_text(plan_.least_givens) : to_text(plan_.least_givens) + " to " + to_text(plan_.most_givens);
    say("givens", count >= plan_.least_givens && count <= plan_.most_givens, "It has " + to_text(count) + " givens; the plan wants " + wanted + ".");
    if (!plan_.pattern.empty()) judge_pattern();
    if (!plan_.symmetries.empty()) {
      CellSet lonely;
      for (const Cell cell : givens) {
        if (!ground_.orbit_of[cell.index].is_subset_of(givens)) lonely.add(cell);
      }
      say("symmetry", lonely.is_empty(), lonely.is_empty() ? "The givens have the symmetry." : "The symmetry lacks a partner for " + names(lonely) + ".");
    }
  }

  void judge_pattern() {
    const CellSet& givens = puzzle_.givens();
    CellSet wrong;
    for (const Candidate& each : ground_.fixed) {
      if (givens.has(each.cell) && puzzle_.digit_at(each.cell) != each.digit) wrong.add(each.cell);
    }
    // The drawing itself, without what the symmetry adds: that is a point of its own.
    CellSet missing;
    CellSet extra;
    for (const Cell cell : plan_shape().all_cells()) {
      const char drawn = plan_.pattern[cell.index];
      if (drawn == kStaysEmpty && givens.has(cell)) extra.add(cell);
      if (drawn != kStaysEmpty && drawn != kMayHold && !givens.has(cell)) missing.add(cell);
    }
    std::string text;
    if (!missing.is_empty()) text += "A given is missing in " + names(missing) + ". ";
    if (!extra.is_empty()) text += "No given should stand in " + names(extra) + ". ";
    if (!wrong.is_empty()) text += "Another digit is drawn in " + names(wrong) + ". ";
    say("pattern", text.empty(), text.empty() ? "The givens keep to the pattern." : std::string(trimmed(text)));
  }

  void judge_looks(const std::vector<Weight>& weights) {
    const auto bounds = bounds_of(plan_, weights);
    std::size_t next = 0;
    for (const Look& look : plan_.looks) {
      if (look.region != Look::Region::kHouses && weights.empty()) {
        not_asked("look");
        continue;
      }
      const GivenBounds& each = bounds[next++];
      const int count = (each.cells & puzzle_.givens()).size();
      std::string text = "'" + look_text(look) + "': " + counted(count, "given") + " in " + counted(each.cells.size(), "cell");
      if (look.counts_empty && !each.is_met(puzzle_.givens())) text += "; empty are " + names(each.cells - puzzle_.givens());
      say("look", each.is_met(puzzle_.givens()), capitalised(text + "."));
    }
  }

  void judge_minimal() {
    if (!plan_.minimal) return;
    const CellSet superfluous = redundant_givens(puzzle_);
    say("minimal", superfluous.is_empty(), superfluous.is_empty() ? "No given is superfluous." : "Without harm " + names(superfluous) + " could go (one at a time).");
  }

  void judge_way(const WayIn& way) {
    const std::vector<Weight>& named = plan_.idea.weights;
    const int open = way.stuck.open().size();
    const bool is_stuck = way.stage >= Stage::kStuck;
    say("before", is_stuck, is_stuck ? "What comes before the idea stops with " + counted(open, "cell") + " open." : "What comes before the idea solves the puzzle: there is no need for the idea.");
    if (!plan_.without.empty()) {
      if (!is_stuck) not_asked("without");
      else say("without", way.other == nullptr, way.other == nullptr ? "None of the excluded techniques says anything there." : capitalised(std::string(way.other->name)) + " says something there.");
    }
    if (way.stage < Stage::kNoOther) not_asked("idea");
    else judge_idea(way);
    if (way.stage < Stage::kMoved) not_asked("after");
    else say("after", way.stage == Stage::kMet, way.stage == Stage::kMet ? "After it the rest follows." : "After it what may follow stops with " + counted(way.end.open().size(), "cell") + " open.");
    judge_looks(way.weights.empty() ? named : way.weights);
    judge_minimal();
  }

  void judge_idea(const WayIn& way) {
    if (way.stage >= Stage::kMoved) {
      say("idea", true, "The idea moves it: " + step_text(way.step, way.stuck));
      return;
    }
    std::string text = "The idea (" + idea_text(plan_.idea) + ") says nothing there";
    if (plan_.idea.kind == PlannedIdea::Kind::kHouses) {
      const Weighing weighing = weigh(way.stuck, plan_.idea.weights);
      const Inference inference = infer(way.stuck, weighing, std::min(4, plan_.idea.level), true);
      text += inference.free_slack > plan_.idea.slack ? ": its free slack is " + to_text(inference.free_slack) + ", the plan allows " + to_text(plan_.idea.slack) : ", though its free slack is " + to_text(inference.free_slack);
    }
    say("idea", false, text + ".");
  }

  // Where the idea is not needed: the hardest step of the path that does without it. Where it comes in: what else moves the puzzle
  // there for no more, and the excluded technique that does.
  void note_shortcuts(const WayIn& way) {
    if (way.stage == Stage::kProper) {
      PathOptions options;
      options.only = plan_.before;
      const auto path = plan_.before.empty() ? Result<Path>(Path(puzzle_)) : find_path(puzzle_, options);
      if (!path || path->steps.empty()) return;
      const auto hardest = std::max_element(path->steps.begin(), path->steps.end(), [](const PathStep& a, const PathStep& b) { return a.measure.cost < b.measure.cost; });
      judgement_.shortcuts.push_back({std::string(hardest->step.technique), hardest->before, hardest->text});
      return;
    }
    for_each_way_round(plan_, way, cost_of_idea(plan_, way), [&](const Technique& technique, const Step& step) {
      judgement_.shortcuts.push_back({std::string(technique.id), way.stuck, step_text(step, way.stuck)});
      return judgement_.shortcuts.size() < kMostShortcuts;
    });
  }

  const Examiner& examiner_;
  const Plan& plan_;
  const PlanGround& ground_;
  Position puzzle_;
  Judgement judgement_;
};

}  // namespace

int Judgement::met() const {
  return static_cast<int>(std::count_if(points.begin(), points.end(), [](const JudgedPoint& point) { return point.is_met; }));
}

Judgement judge_points(const Examiner& examiner, const PlanGround& ground, const Position& puzzle, const WayIn& way) { return Judge(examiner, ground, puzzle).points_of(way); }

Judgement judge(const Examiner& examiner, const PlanGround& ground, const Position& puzzle) { return Judge(examiner, ground, puzzle).run(); }

}  // namespace cp
