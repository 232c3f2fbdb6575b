// SPDX-License-Identifier: Apache-2.0
#include "course/course.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "base/text.h"
#include "course/idea_facts.h"
#include "lesson/series.h"
#include "path/selection.h"

namespace cp {

namespace {

constexpr std::size_t kMostChoices = 60;  // puzzles of an idea that are compared with those of its neighbours
constexpr std::string_view kBasicSingle = "single";

std::string_view family_of(std::string_view id) {
  const Technique* technique = technique_or_null(id);
  return technique != nullptr ? technique->family : id;
}

// Does the idea (a technique, a family, "uniqueness", "balance") stand for this technique?
bool stands_for(const std::string& idea, const std::string& id) {
  if (idea == id) return true;
  const Technique* technique = technique_or_null(id);
  return technique != nullptr && means(idea, *technique);
}

bool is_known(const std::string& id, const std::vector<std::string>& known) {
  return std::any_of(known.begin(), known.end(), [&](const std::string& idea) { return stands_for(idea, id); });
}

std::string said_count(int count, const std::string& one, const std::string& many) { return std::to_string(count) + " " + (count == 1 ? one : many); }

std::vector<std::string> new_techniques(const SurveyRecord& record, const std::vector<std::string>& known) {
  std::vector<std::string> fresh;
  for (const TechniqueUse& use : record.path->techniques) {
    if (!is_known(use.technique, known)) fresh.push_back(use.technique);
  }
  return fresh;
}

// Where the givens stand, and where they stand in the canonical form: equal there means the same layout in other clothes.
struct Layout {
  std::array<bool, kMaxCells> given{};
  std::string form;
  int givens = 0;
};

Layout layout_of(const SurveyRecord& record) {
  Layout layout;
  for (std::size_t i = 0; i < record.puzzle.size(); ++i) {
    layout.given[i] = record.puzzle[i] != '.';
    layout.givens += layout.given[i] ? 1 : 0;
  }
  for (const char digit : record.canonical) layout.form += digit == '.' ? '.' : 'x';
  return layout;
}

int common_givens(const Layout& a, const Layout& b) {
  int common = 0;
  for (std::size_t i = 0; i < a.given.size(); ++i) common += a.given[i] && b.given[i] ? 1 : 0;
  return common;
}

// A puzzle that fits an idea.
struct Choice {
  std::size_t candidate = 0;
  std::vector<std::string> fresh;
  int own_points = 0;
  Layout layout;
};

class Planner {
 public:
  Planner(const std::vector<CourseCandidate>& candidates, const CourseWish& wish) : candidates_(candidates), wish_(wish) {
    for (std::size_t i = 0; i < candidates.size(); ++i) {
      const SurveyRecord& record = candidates[i].record;
      if (record.is_solved()) usable_.push_back(i);
    }
    known_ = wish.assumes.empty() ? std::vector<std::string>{std::string(kBasicSingle)} : wish.assumes;
  }

  Course run() {
    course_.usable = static_cast<int>(usable_.size());
    if (wish_.ideas.empty()) take_ideas_as_they_come();
    else {
      for (const std::string& idea : wish_.ideas) take_idea(idea);
    }
    link();
    return std::move(course_);
  }

 private:
  // What a single puzzle is worth for its idea: the idea should be the hardest thing, come once, and leave singles.
  [[nodiscard]] int own_points(const SurveyRecord& record, const std::vector<std::string>& fresh) const {
    const SurveyPath& path = *record.path;
    int uses = 0;
    for (const TechniqueUse& use : path.techniques) {
      if (std::find(fresh.begin(), fresh.end(), use.technique) != fresh.end()) uses += use.steps;
    }
    const bool is_hardest = std::find(fresh.begin(), fresh.end(), path.technique) != fresh.end();
    const auto not_single = static_cast<int>(std::count_if(path.tail.begin(), path.tail.end(), [](const std::string& id) { return family_of(id) != kBasicSingle; }));
    return 10 * (uses - 1) + 15 * (static_cast<int>(fresh.size()) - 1) + 5 * not_single + 2 * (path.beyond_singles - uses) + (is_hardest ? 0 : 20);
  }

  // Puzzles whose path asks for this idea and otherwise for what is known; the best first, no two alike.
  std::vector<Choice> choices_for(const std::string& idea) {
    std::vector<Choice> choices;
    for (const std::size_t i : usable_) {
      const SurveyRecord& record = candidates_[i].record;
      Choice choice{i, new_techniques(record, known_), 0, {}};
      const bool fits = !choice.fresh.empty() && std::all_of(choice.fresh.begin(), choice.fresh.end(), [&](const std::string& id) { return stands_for(idea, id); });
      if (!fits) continue;
      choice.own_points = own_points(record, choice.fresh);
      choices.push_back(std::move(choice));
    }
    std::stable_sort(choices.begin(), choices.end(), [](const Choice& a, const Choice& b) { return a.own_points < b.own_points; });
    std::set<std::string> seen;
    std::erase_if(choices, [&](const Choice& choice) {
      const SurveyRecord& record = candidates_[choice.candidate].record;
      return !seen.insert(record.canonical.empty() ? record.puzzle : record.canonical).second;
    });
    return choices;
  }

  void take_idea(const std::string& idea) {
    std::vector<Choice> choices = choices_for(idea);
    if (choices.empty()) {
      note_gap(idea);
      return;  // what was not taught is not known afterwards
    }
    const auto count = static_cast<int>(choices.size());
    if (choices.size() > kMostChoices) choices.resize(kMostChoices);
    for (Choice& choice : choices) choice.layout = layout_of(candidates_[choice.candidate].record);
    stages_.push_back({idea, count, std::move(choices), known_});
    known_.push_back(idea);
  }

  // The cheapest technique that some puzzle has as its only new one, again and again.
  void take_ideas_as_they_come() {
    while (stages_.size() < wish_.most_lessons) {
      std::set<std::pair<int, std::string>> single;
      for (const std::size_t i : usable_) {
        const auto fresh = new_techniques(candidates_[i].record, known_);
        if (fresh.size() == 1) single.emplace(cost_of(fresh.front()), fresh.front());
      }
      if (single.empty()) return;
      take_idea(single.begin()->second);
    }
  }

  void note_gap(const std::string& idea) {
    CourseGap gap{idea, 0, {}, {}};
    std::map<std::string, int> together;
    for (const std::size_t i : usable_) {
      const auto fresh = new_techniques(candidates_[i].record, known_);
      if (std::none_of(fresh.begin(), fresh.end(), [&](const std::string& id) { return stands_for(idea, id); })) continue;
      ++gap.with_others;
      for (const std::string& id : fresh) {
        if (!stands_for(idea, id)) ++together[id];
      }
    }
    std::vector<std::pair<int, std::string>> often;
    for (const auto& [id, count] : together) often.emplace_back(-count, id);
    std::sort(often.begin(), often.end());
    for (std::size_t i = 0; i < often.size() && i < 3; ++i) gap.others.push_back(often[i].second);
    std::vector<std::string> names;
    for (const std::string& id : gap.others) names.push_back(shown(id));
    gap.why = "no puzzle has " + shown(idea) + " as its only new idea";
    if (gap.with_others > 0) gap.why += "; " + said_count(gap.with_others, "puzzle asks", "puzzles ask") + " for it together with something else that is new, most often " + listed(names);
    course_.gaps.push_back(std::move(gap));
  }

  [[nodiscard]] int effort(const Choice& choice) const { return candidates_[choice.candidate].record.path->effort; }

  // The effort should rise, and not jump: `wanted` is the mean rise from the first lesson to the last.
  [[nodiscard]] int rise_points(const Choice& before, const Choice& after, int wanted) const {
    const int rise = effort(after) - effort(before);
    return rise < 0 ? 10 - rise / 10 : std::abs(rise - wanted) / 20;
  }

  static int look_points(const Choice& before, const Choice& after) {
    const int common = 100 * common_givens(before.layout, after.layout) / std::max(1, std::min(before.layout.givens, after.layout.givens));
    const bool same = !before.layout.form.empty() && before.layout.form == after.layout.form;
    return std::max(0, common - 35) / 2 + (same ? 50 : 0);
  }

  // One choice a stage with the least sum of points: stage by stage, for each choice the best way to reach it.
  void link() {
    if (stages_.empty()) return;
    const int wanted = std::max(0, (middle_effort(stages_.back()) - middle_effort(stages_.front())) / std::max(1, static_cast<int>(stages_.size()) - 1));
    std::vector<std::vector<std::pair<int, std::size_t>>> best;  // per stage and choice: points so far, choice before
    for (std::size_t s = 0; s < stages_.size(); ++s) {
      auto& row = best.emplace_back();
      for (const Choice& choice : stages_[s].choices) {
        std::pair<int, std::size_t> way{s == 0 ? 0 : 1'000'000, 0};
        for (std::size_t b = 0; s > 0 && b < stages_[s - 1].choices.size(); ++b) {
          const Choice& before = stages_[s - 1].choices[b];
          const int points = best[s - 1][b].first + rise_points(before, choice, wanted) + look_points(before, choice);
          if (points < way.first) way = {points, b};
        }
        row.emplace_back(way.first + choice.own_points, way.second);
      }
    }
    std::size_t at = static_cast<std::size_t>(std::min_element(best.back().begin(), best.back().end()) - best.back().begin());
    std::vector<std::size_t> chosen(stages_.size());
    for (std::size_t s = stages_.size(); s-- > 0;) {
      chosen[s] = at;
      at = best[s][at].second;
    }
    for (std::size_t s = 0; s < stages_.size(); ++s) course_.lessons.push_back(lesson(s, chosen, wanted));
  }

  struct Stage {
    std::string idea;
    int count = 0;
    std::vector<Choice> choices;
    std::vector<std::string> known;
  };

  [[nodiscard]] int middle_effort(const Stage& stage) const {
    std::vector<int> efforts;
    for (const Choice& choice : stage.choices) efforts.push_back(effort(choice));
    std::nth_element(efforts.begin(), efforts.begin() + static_cast<std::ptrdiff_t>(efforts.size() / 2), efforts.end());
    return efforts[efforts.size() / 2];
  }

  [[nodiscard]] CourseLesson lesson(std::size_t s, const std::vector<std::size_t>& chosen, int wanted) const {
    const Stage& stage = stages_[s];
    const Choice& choice = stage.choices[chosen[s]];
    const Choice* before = s == 0 ? nullptr : &stages_[s - 1].choices[chosen[s - 1]];
    CourseLesson lesson{stage.idea, choice.candidate, choice.fresh, stage.known, stage.count - 1, choice.own_points, 0, 0, {}};
    if (before != nullptr) {
      lesson.rise_points = rise_points(*before, choice, wanted);
      lesson.look_points = look_points(*before, choice);
    }
    lesson.why = why(stage, choice, before);
    return lesson;
  }

  [[nodiscard]] std::string why(const Stage& stage, const Choice& choice, const Choice* before) const {
    const SurveyPath& path = *candidates_[choice.candidate].record.path;
    std::vector<std::string> fresh;
    for (const std::string& id : choice.fresh) fresh.push_back(shown(id));
    std::vector<std::string> known;
    for (const std::string& idea : stage.known) known.push_back(shown(idea));
    std::string text = "New is " + listed(fresh) + "; the rest of the path asks for what is known (" + listed(known) + "). ";
    text += said_count(path.steps, "step", "steps") + ", " + std::to_string(path.beyond_singles) + " of them no singles; the hardest costs " + std::to_string(path.hardest) + " (" + shown(path.technique) + "). ";
    const bool plain_tail = std::all_of(path.tail.begin(), path.tail.end(), [](const std::string& id) { return family_of(id) == kBasicSingle; });
    text += plain_tail ? "After it only singles are left. " : "After it comes more than singles. ";
    text += "The effort is " + std::to_string(path.effort);
    if (before != nullptr) text += ", after " + std::to_string(effort(*before)) + " in the lesson before; the two boards share " + said_count(common_givens(before->layout, choice.layout), "place", "places") + " of givens";
    text += ". ";
    text += stage.count == 1 ? "It is the only puzzle with exactly this new idea." : "Chosen from " + std::to_string(stage.count) + " puzzles with exactly this new idea.";
    return text;
  }

  const std::vector<CourseCandidate>& candidates_;
  const CourseWish& wish_;
  std::vector<std::size_t> usable_;
  std::vector<std::string> known_;
  std::vector<Stage> stages_;
  Course course_;
};

}  // namespace

std::string about_course(const Course& course, const CourseWish& wish, const std::string& title, const std::string& language) {
  std::string assumes;
  for (const std::string& name : wish.assumes) assumes += (assumes.empty() ? "" : ", ") + name;
  return std::string(kSeriesFirstLine) + "\ntitle: " + title + "\nlanguage: " + language + "\nassumes: " + (assumes.empty() ? std::string(kBasicSingle) : assumes) + "\n\n" +
         said_count(static_cast<int>(course.lessons.size()), "lesson", "lessons") + ", each with one new idea, chosen from " + said_count(course.usable, "puzzle", "puzzles") + ".\n";
}

Result<Course> choose_course(const std::vector<CourseCandidate>& candidates, const CourseWish& wish) {
  for (const auto* names : {&wish.ideas, &wish.assumes}) {
    const auto selection = select_techniques(*names, {});
    if (!selection) return selection.error();
  }
  return Planner(candidates, wish).run();
}

}  // namespace cp
