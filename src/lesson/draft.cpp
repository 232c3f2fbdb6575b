// SPDX-License-Identifier: Apache-2.0
#include "lesson/draft.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "deduce/basics.h"
#include "lesson/draft_idea.h"
#include "lesson/draft_page.h"
#include "grid/notation.h"
#include "speak/naming.h"

namespace cp {

namespace {

const Technique* technique_of(const Step& step) {
  const auto found = find_technique(step.technique);
  return found ? *found : nullptr;
}

// Steps of these families are told in runs.
bool is_plain(const Step& step) {
  const Technique* technique = technique_of(step);
  return technique != nullptr && is_basic_family(technique->family);
}

bool is_single(const Step& step) { return std::holds_alternative<LoneReason>(step.reason); }

Position after(const PathStep& at) {
  Position position = at.before;
  apply(at.step, position);
  return position;
}

// A stretch path[from, to) of plain steps.
struct Run {
  std::size_t from = 0;
  std::size_t to = 0;
};

class Drafter {
 public:
  explicit Drafter(const DraftInput& input) : input_(input), speaker_(input.language), words_(speaker_.words()), key_(input.path[input.key]), shape_(input.puzzle.shape()) {
    for (const char c : givens_line(input.puzzle)) seed_ = seed_ * 31 + static_cast<unsigned char>(c);
    seed_ ^= seed_ >> 29;
  }

  Lesson draft() {
    front();
    puzzle_scene();
    stretch(0, input_.key, words_.say("draft.scan"), true);
    for (WrittenScene& scene : idea_scenes({speaker_, seed_, key_, prefix()})) lesson_.scenes.push_back(std::move(scene));
    if (input_.asked_alternatives && !key_.step.eliminations.empty()) alternatives_scene();
    tail();
    summary_scene();
    for (WrittenScene& scene : exercise_scenes({speaker_, seed_, key_, prefix()})) lesson_.scenes.push_back(std::move(scene));
    solution_scene();
    trim_breaks();
    return std::move(lesson_);
  }

 private:
  // ---- front matter --------------------------------------------------------------------------------------------------

  [[nodiscard]] bool is_balance() const { return std::holds_alternative<BalanceReason>(key_.step.reason); }
  [[nodiscard]] std::string name_of(const Step& step) const {
    const Technique* technique = technique_of(step);
    return speaker_.technique(step.technique, technique == nullptr ? step.technique : technique->name);
  }
  [[nodiscard]] std::pair<std::string, std::string> pans(const Step& step, const Position& before) const {
    const Scales scales = lay_out(*std::get_if<BalanceReason>(&step.reason), before);
    return {speaker_.houses(shape_, scales.left.houses), speaker_.houses(shape_, scales.right.houses)};
  }

  void front() {
    lesson_.puzzle = givens_line(input_.puzzle);
    lesson_.language = input_.language;
    lesson_.idea = key_.step.technique;
    lesson_.level = level();
    lesson_.source = words_.say("draft.source");
    lesson_.teaches = {lesson_.idea};
    std::set<std::string> needs;
    for (std::size_t i = 0; i < input_.path.size(); ++i) {
      const Step& step = input_.path[i].step;
      const Technique* technique = technique_of(step);
      const std::string name(technique != nullptr && is_plain(step) && technique->family != key_family() ? technique->family : step.technique);
      if (name != lesson_.idea) needs.insert(name);
    }
    lesson_.needs.assign(needs.begin(), needs.end());
    const std::string title = one_line(input_.title);
    if (!title.empty()) {
      lesson_.title = title;
    } else if (is_balance()) {
      const auto [left, right] = pans(key_.step, key_.before);
      lesson_.title = capitalised(words_.say("draft.title.balance", {{"left", left}, {"right", right}}));
    } else {
      lesson_.title = words_.say("draft.title.technique", {{"name", name_of(key_.step)}});
    }
  }
  // A title is one line of text; whatever else was given becomes blanks.
  static std::string one_line(std::string text) {
    for (char& c : text) c = static_cast<unsigned char>(c) < 0x20 || c == 0x7F ? ' ' : c;
    return std::string(trimmed(text));
  }
  [[nodiscard]] std::string_view key_family() const {
    const Technique* technique = technique_of(key_.step);
    return technique == nullptr ? std::string_view() : technique->family;
  }
  // By the cost of the key step: a subset is 1, a fish 2, most balances 3 or 4.
  [[nodiscard]] int level() const {
    const int cost = key_.measure.cost;
    return cost < 60 ? 1 : cost < 120 ? 2 : cost < 180 ? 3 : cost < 260 ? 4 : 5;
  }

  // ---- the way to the idea -------------------------------------------------------------------------------------------

  void puzzle_scene() {
    DraftScene scene(words_.say("draft.puzzle"));
    scene.say(words_.vary("draft.hook", seed_, {{"n", input_.puzzle.givens().size()}, {"side", shape_.side()}}));
    if (is_balance()) {
      const auto [left, right] = pans(key_.step, key_.before);
      const Candidate& first = key_.step.eliminations.front();
      if (right.empty()) scene.say(words_.say("draft.promise.alone", {{"left", left}}));
      else scene.say(words_.vary("draft.promise.balance", seed_ / 3, {{"left", left}, {"right", right}, {"cell", shape_.name_of(first.cell)}, {"d", digit_name(first.digit)}}));
    } else {
      scene.say(words_.vary("draft.promise.technique", seed_ / 3, {{"name", name_of(key_.step)}}));
    }
    scene.say(words_.say("draft.proper"));
    if (input_.is_minimal) scene.say(words_.say("draft.minimal"));
    scene.say(input_.basics_open > 0 ? words_.say("draft.basics.stop", {{"n", input_.basics_open}}) : words_.say("draft.basics.solve"));
    if (!input_.is_needed && input_.basics_open > 0) scene.say(words_.say("draft.early"));
    scene.note(words_.vary("draft.note.puzzle", seed_ / 7));
    lesson_.scenes.push_back(scene.finish());
  }

  // How the run up to the idea can be said in one line; empty when it takes single steps.
  [[nodiscard]] Prefix prefix() const {
    Prefix result;
    result.end = key_.before;
    if (input_.key == 0) {
      result.is_short = true;
    } else if (const auto all = std::all_of(input_.path.begin(), input_.path.begin() + static_cast<std::ptrdiff_t>(input_.key), [](const PathStep& at) { return is_plain(at.step); }); all) {
      const auto [name, text] = run_directive({0, input_.key});
      result.is_short = !name.empty();
      result.name = name;
      result.text = text;
    }
    result.puzzle = input_.puzzle;
    return result;
  }

  [[nodiscard]] bool ends_at(const Position& start, const std::vector<std::string>& techniques, const Position& end) const {
    PathOptions options;
    options.only = techniques;
    const auto path = find_path(start, options);
    return path && path->end_position == end;
  }

  // "singles", "basics" or "apply ..." when that reaches the very position at which the run ends.
  [[nodiscard]] std::pair<std::string, std::string> run_directive(const Run& run) const {
    const Position& start = input_.path[run.from].before;
    const Position end = after(input_.path[run.to - 1]);
    std::set<std::string> used = {"full-house", "hidden-single", "naked-single"};
    for (std::size_t i = run.from; i < run.to; ++i) used.insert(std::string(input_.path[i].step.technique));
    if (used.size() == 3 && ends_at(start, {"single"}, end)) return {"singles", ""};
    if (ends_at(start, basic_families(), end)) return {"basics", ""};
    for (const std::vector<std::string>& families : {std::vector<std::string>{"single", "locked"}, std::vector<std::string>{"single", "locked", "subset"}}) {
      if (ends_at(start, families, end)) return {"apply", joined(families, ", ")};
    }
    const std::vector<std::string> ids(used.begin(), used.end());
    if (ends_at(start, ids, end)) return {"apply", joined(ids, ", ")};
    return {};
  }

  // Scenes for path[from, to): one for each run of plain steps, one for each other step.
  void stretch(std::size_t from, std::size_t to, std::string heading, bool is_first) {
    for (std::size_t at = from; at < to;) {
      if (!is_plain(input_.path[at].step)) {
        hard_scene(at++);
        continue;
      }
      std::size_t end = at;
      while (end < to && is_plain(input_.path[end].step)) ++end;
      run_scene({at, end}, heading, is_first && end == input_.key);
      heading = words_.say("draft.on");
      at = end;
    }
  }

  void run_scene(const Run& run, const std::string& heading, bool ends_before_idea) {
    DraftScene scene(heading);
    CellSet fresh;
    int struck = 0;
    for (std::size_t i = run.from; i < run.to; ++i) {
      for (const Candidate& placed : input_.path[i].step.placements) fresh.add(placed.cell);
      struck += static_cast<int>(input_.path[i].step.eliminations.size());
    }
    if (!fresh.is_empty()) {
      const std::string names = fresh.size() <= 6 ? " (" + speaker_.cell_list(shape_, fresh) + ")" : "";
      scene.say(words_.say(has_explained_singles_ ? "draft.singles.again" : "draft.singles", {{"n", fresh.size()}, {"names", names}}));
      has_explained_singles_ = true;
    }
    const std::vector<std::string> others = other_techniques(run);
    if (!others.empty()) {
      const bool is_alone = others.size() == 1;
      scene.say(words_.say(fresh.is_empty() ? "draft.others.alone" : "draft.others", {{"list", words_.list(others)}}) +
                (struck == 0 ? "" : " " + words_.say(is_alone ? "draft.struck.alone" : "draft.struck", {{"n", struck}})));
    }
    if (ends_before_idea && input_.is_needed) scene.say(words_.vary("draft.stop", seed_ / 11, {{"n", after(input_.path[run.to - 1]).open().size()}}));
    add_run(scene, run);
    if (ends_before_idea) scene.note(words_.say("draft.note.scan"));
    lesson_.scenes.push_back(scene.finish());
  }

  void add_run(DraftScene& scene, const Run& run) const {
    const auto [name, text] = run_directive(run);
    if (!name.empty()) return scene.direct(name, text);
    for (std::size_t i = run.from; i < run.to; ++i) {
      const Step& step = input_.path[i].step;
      scene.direct("step", conclusions_text(shape_, step.placements, step.eliminations) + " by " + std::string(step.technique));
    }
    scene.direct("board", "after");
  }

  // "a naked pair three times" for the steps of a technique; keeps the order in which techniques first occur.
  [[nodiscard]] std::vector<std::string> other_techniques(const Run& run) const {
    std::vector<std::pair<std::string, int>> counts;
    for (std::size_t i = run.from; i < run.to; ++i) {
      const Step& step = input_.path[i].step;
      if (is_single(step)) continue;
      const std::string name = name_in_sentence(speaker_, step);
      const auto known = std::find_if(counts.begin(), counts.end(), [&name](const auto& entry) { return entry.first == name; });
      if (known == counts.end()) counts.emplace_back(name, 1);
      else ++known->second;
    }
    std::vector<std::string> items;
    for (const auto& [name, count] : counts) {
      items.push_back(words_.say(count <= 2 ? "draft.times." + to_text(count) : "draft.times", {{"name", name}, {"n", count}}));
    }
    return items;
  }

  // A step that gets a scene of its own.
  void hard_scene(std::size_t number) {
    const PathStep& at = input_.path[number];
    if (const auto* reason = std::get_if<BalanceReason>(&at.step.reason)) {
      const auto [left, right] = pans(at.step, at.before);
      const std::string name = "also" + (balances_ == 0 ? std::string() : to_text(balances_ + 1));
      ++balances_;
      DraftScene scene(words_.say("draft.another", {{"left", left}, {"right", right}}));
      scene.say(speaker_.step(at.step, at.before, ""));
      scene.direct("balance", balance_line(shape_, reason->weights, name));
      scene.direct("show", name + " falls");
      scene.direct("step", conclusions_text(shape_, {}, at.step.eliminations) + " by " + name);
      return lesson_.scenes.push_back(scene.finish());
    }
    DraftScene scene(capitalised(name_of(at.step)));
    for (const std::string& paragraph : in_breaths(speaker_.step(at.step, at.before, name_of(at.step)))) scene.say(paragraph);
    scene.direct("step", conclusions_text(shape_, at.step.placements, at.step.eliminations) + " by " + std::string(at.step.technique));
    lesson_.scenes.push_back(scene.finish());
  }

  // ---- after the idea ------------------------------------------------------------------------------------------------

  // Why another way asks more of a person, or as much.
  std::string comparison(const PathStep& other) const {
    const Measure& theirs = other.measure;
    const Measure& ours = key_.measure;
    if (theirs.cost == ours.cost) return words_.say("draft.same");
    if (theirs.cases > std::max(ours.cases, 1)) return words_.say("draft.harder.cases", {{"n", theirs.cases}});
    if (theirs.supposes && !ours.supposes) return words_.say("draft.harder.supposes", {{"n", theirs.lines}});
    if (theirs.facts > ours.facts && theirs.cells > 0) return words_.say("draft.harder.cells", {{"cells", theirs.cells}, {"n", theirs.facts}});
    return words_.say("draft.harder");
  }

  std::string alternative_name(const PathStep& other) const {
    if (!std::holds_alternative<BalanceReason>(other.step.reason)) return words_.say("draft.alternative.harder", {{"name", name_in_sentence(speaker_, other.step)}});
    const auto [left, right] = pans(other.step, other.before);
    return words_.say("draft.alternative.balance", {{"left", left}, {"right", right}});
  }

  // The easier ones in one breath.
  void say_easier(DraftScene& scene) const {
    std::vector<std::string> names;
    std::vector<std::string> costs;
    for (const PathStep& other : input_.alternatives) {
      if (other.measure.cost >= key_.measure.cost || std::holds_alternative<BalanceReason>(other.step.reason)) continue;
      names.push_back(name_in_sentence(speaker_, other.step));
      costs.push_back(to_text(other.measure.cost));
    }
    if (names.empty()) return;
    scene.say(words_.say("draft.alternative.easier", {{"list", words_.list(names)}, {"n", static_cast<int>(names.size())}, {"costs", words_.list(costs)}, {"own", key_.measure.cost}}));
  }

  void alternatives_scene() {
    DraftScene scene(words_.say("draft.alternatives"));
    const Candidate& target = key_.step.eliminations.front();
    scene.say(words_.vary("draft.alternatives.ask", seed_ / 13, {{"cell", shape_.name_of(target.cell)}, {"d", digit_name(target.digit)}}));
    if (input_.alternatives.empty()) {
      scene.say(words_.say("draft.alternatives.none"));
    } else {
      scene.say(words_.say(input_.alternatives_found > input_.alternatives.size() ? "draft.alternatives.found" : "draft.alternatives.all", {{"n", static_cast<int>(input_.alternatives_found)}}));
    }
    say_easier(scene);
    for (const PathStep& other : input_.alternatives) {
      const bool is_told = other.measure.cost < key_.measure.cost && !std::holds_alternative<BalanceReason>(other.step.reason);
      if (is_told) continue;
      scene.say(alternative_name(other) + (other.measure.cost < key_.measure.cost ? "" : " " + comparison(other)) + " " + words_.say("draft.measure", {{"cost", other.measure.cost}, {"own", key_.measure.cost}}));
    }
    if (is_balance()) scene.direct("show", std::string(kKeyName) + " falls");
    scene.note(words_.say("draft.note.alternatives"));
    lesson_.scenes.push_back(scene.finish());
  }

  void tail() {
    const std::size_t next = input_.key + 1;
    const bool is_solved = after(input_.path.back()).is_complete();
    std::size_t singles = input_.path.size();
    // The last run of singles is not spelled out: it would give the solution away.
    while (is_solved && singles > next && is_single(input_.path[singles - 1].step)) --singles;
    stretch(next, singles, words_.vary("draft.after", seed_ / 17), false);
    const Position end = singles < input_.path.size() ? input_.path[singles].before : after(input_.path.back());
    if (end.is_complete()) return;
    DraftScene scene(words_.say(is_solved ? "draft.rest" : "draft.ends"));
    scene.say(words_.say(is_solved ? "draft.rest.words" : "draft.ends.words", {{"n", end.open().size()}}));
    scene.direct("board", "candidates all");
    lesson_.scenes.push_back(scene.finish());
  }

  void summary_scene() {
    DraftScene scene(words_.say("draft.summary"));
    const auto struck = static_cast<int>(key_.step.eliminations.size());
    if (is_balance()) {
      const auto [left, right] = pans(key_.step, key_.before);
      scene.say(words_.say("draft.summary.balance", {{"left", left}, {"right", right}, {"n", struck}}));
    } else if (struck > 0) {
      scene.say(words_.say("draft.summary.technique", {{"name", name_in_sentence(speaker_, key_.step)}, {"n", struck}}));
    } else {
      scene.say(words_.say("draft.summary.technique.placed", {{"name", name_in_sentence(speaker_, key_.step)}, {"n", static_cast<int>(key_.step.placements.size())}}));
    }
    const bool is_solved = after(input_.path.back()).is_complete();
    scene.say(words_.say("draft.summary.path", {{"n", static_cast<int>(input_.path.size())}, {"key", static_cast<int>(input_.key) + 1}}) +
              (is_solved ? "" : " " + words_.say("draft.summary.open")));
    if (is_balance()) scene.direct("show", std::string(kKeyName) + " falls");
    scene.note(words_.say("draft.note.summary"));
    lesson_.scenes.push_back(scene.finish());
  }

  void solution_scene() {
    DraftScene scene(words_.say("draft.solution"));
    scene.say(words_.say("draft.solution.words"));
    scene.direct("board", "hide");
    scene.direct("solution");
    lesson_.scenes.push_back(scene.finish());
  }

  void trim_breaks() {
    for (WrittenScene& scene : lesson_.scenes) {
      while (!scene.lines.empty() && scene.lines.back().kind == WrittenLine::Kind::kBreak) scene.lines.pop_back();
    }
  }

  const DraftInput& input_;
  Speaker speaker_;
  const Words& words_;
  const PathStep& key_;
  const Shape& shape_;
  Lesson lesson_;
  std::uint64_t seed_ = 17;
  int balances_ = 0;
  bool has_explained_singles_ = false;
};

}  // namespace

Result<Lesson> draft_lesson(const DraftInput& input) {
  if (input.key >= input.path.size()) return Error{ErrorCode::kBadArgument, "the path has no such step", "choose a step of the path", {}};
  return Drafter(input).draft();
}

}  // namespace cp
