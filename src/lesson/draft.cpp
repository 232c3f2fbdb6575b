// SPDX-License-Identifier: Apache-2.0
#include "lesson/draft.h"

#include <algorithm>
#include <optional>

#include "base/text.h"
#include "deduce/technique.h"
#include "grid/notation.h"
#include "lesson/balance_scenes.h"
#include "speak/balance_story.h"
#include "speak/naming.h"
#include "speak/step_text.h"

namespace cp {

namespace {

// Steps that need no scene of their own: singles, and counts of one kind against one kind with nothing to spare
// (locked candidates, subsets, fish without fins).
bool is_routine(const Step& step) {
  if (std::holds_alternative<LoneReason>(step.reason)) return true;
  const auto* linear = std::get_if<LinearReason>(&step.reason);
  if (linear == nullptr) return false;
  int sum = 0;
  std::optional<Constraint::Kind> bases;
  std::optional<Constraint::Kind> covers;
  for (const LinearTerm& term : linear->terms) {
    sum += term.multiplier;
    std::optional<Constraint::Kind>& kind = term.multiplier < 0 ? bases : covers;
    if (kind && *kind != term.constraint.kind) return false;
    kind = term.constraint.kind;
  }
  return sum == 0;
}

// The name that the catalogue gives the technique.
std::string name_of(const Step& step) {
  const auto technique = find_technique(step.technique);
  return technique ? std::string((*technique)->name) : technique_words(step.technique);
}

bool is_single(const Step& step) { return std::holds_alternative<LoneReason>(step.reason); }

std::string text_of(const PathScene& at) { return at.text.empty() ? step_text(at.step, at.before) : at.text; }

Position after(const PathScene& at) {
  Position position = at.before;
  apply(at.step, position);
  return position;
}

// ---- checks ----------------------------------------------------------------------------------------------------------

Result<Position> solved_position(const DraftInput& input) {
  const Shape& shape = input.puzzle.shape();
  const Error misfit{ErrorCode::kBadArgument, "the solution does not fit the puzzle", "give the solution of this very puzzle, one digit a cell", {}};
  if (static_cast<int>(input.solution.size()) != shape.cell_count()) return misfit;
  Position solved = input.puzzle;
  for (const Cell cell : shape.all_cells()) {
    const auto digit = digit_from(input.solution[cell.index], shape);
    if (!digit) return misfit;
    if (const auto given = input.puzzle.digit_at(cell)) {
      if (*given != *digit) return misfit;
    } else {
      solved.place(cell, *digit);
    }
  }
  if (solved.has_clash()) return misfit;
  return solved;
}

// ---- scenes ----------------------------------------------------------------------------------------------------------

Scene puzzle_scene(const DraftInput& input) {
  const Shape& shape = input.puzzle.shape();
  const int givens = input.puzzle.givens().size();
  Scene scene;
  scene.heading = "The puzzle";
  scene.paragraphs.push_back({"A grid of " + to_text(shape.side()) + " by " + to_text(shape.side()) + " cells with " +
                                  counted(givens, "given digit") + ". Every row, every column and every box is to hold each digit from " +
                                  digit_range(shape) + " once.",
                              ""});
  scene.paragraphs.push_back({input.is_proved_unique
                                  ? "The puzzle has exactly one solution: a complete search has proved it. The argument of this lesson does not lean on that. "
                                    "Each step follows from the digits on the board alone."
                                  : "That the puzzle has exactly one solution has not been proved here. The argument of this lesson does not lean on it. Each "
                                    "step follows from the digits on the board alone.",
                              ""});
  for (const std::string& fact : input.facts) scene.paragraphs.push_back({fact, ""});
  Figure board(input.puzzle);
  board.title = "The puzzle";
  describe(board);
  scene.board = std::move(board);
  scene.note = "Leave the board up for a minute. Ask where the givens crowd together and where they are missing.";
  return scene;
}

// "three naked pairs" for the steps of a technique; keeps the order in which techniques first occur.
std::vector<std::string> other_techniques(const std::vector<PathScene>& path, std::size_t from, std::size_t to) {
  std::vector<std::pair<std::string, int>> counts;
  for (std::size_t i = from; i < to; ++i) {
    if (is_single(path[i].step)) continue;
    const std::string words = name_of(path[i].step);
    const auto known = std::find_if(counts.begin(), counts.end(), [&words](const auto& entry) { return entry.first == words; });
    if (known == counts.end()) {
      counts.emplace_back(words, 1);
    } else {
      ++known->second;
    }
  }
  std::vector<std::string> items;
  for (const auto& [words, count] : counts) items.push_back(words + (count == 1 ? " once" : count == 2 ? " twice" : " " + spoken_number(count) + " times"));
  return items;
}

// A run of routine steps as one scene. `names_cells`: may the new digits be told? Not in the run that ends the puzzle.
Scene routine_scene(const std::vector<PathScene>& path, std::size_t from, std::size_t to, std::string heading) {
  const Shape& shape = path[from].before.shape();
  Scene scene;
  scene.heading = std::move(heading);
  CellSet fresh;
  int struck = 0;
  for (std::size_t i = from; i < to; ++i) {
    for (const Candidate& placed : path[i].step.placements) fresh.add(placed.cell);
    struck += static_cast<int>(path[i].step.eliminations.size());
    scene.steps.push_back(text_of(path[i]));
  }
  if (!fresh.is_empty()) {
    const bool is_one = fresh.size() == 1;
    scene.paragraphs.push_back({capitalised(counted(fresh.size(), "digit")) + (is_one ? " goes" : " go") +
                                    " in by singles: a cell that can hold only one digit, or a row, column or box with only one place left for a digit. " +
                                    (is_one ? "It is" : "They are") + " underlined on the board" +
                                    (fresh.size() <= 6 ? " (" + cell_names(shape, fresh) + ")." : "."),
                                "singles"});
  }
  const std::vector<std::string> others = other_techniques(path, from, to);
  if (!others.empty()) {
    const bool is_alone = others.size() == 1;
    scene.paragraphs.push_back({std::string(fresh.is_empty() ? "This takes " : "Besides singles this takes ") + listed(others) + ". " +
                                    (struck == 0 ? std::string() : (is_alone ? "That strikes out " : "Together they strike out ") + counted(struck, "candidate") + "."),
                                ""});
  }
  Figure board(after(path[to - 1]));
  board.title = scene.heading;
  board.fresh = fresh;
  board.candidates = board.position.open();
  describe(board);
  scene.board = std::move(board);
  return scene;
}

Scene hard_scene(const PathScene& at) {
  Scene scene;
  if (const auto* reason = std::get_if<BalanceReason>(&at.step.reason)) {
    const BalanceSides sides = balance_sides(*reason);
    scene.heading = "Another balance: " + house_names(at.before.shape(), sides.left) + " against " + house_names(at.before.shape(), sides.right);
    scene.paragraphs.push_back({text_of(at), ""});
    scene.board = balance_figure(*reason, at.before, at.step.eliminations);
    scene.pans = balance_pans(*reason, at.before, true, reason->cases.size() == 1 ? reason->cases[0].shares : DigitCounts{});
    scene.table = tally_table(*reason, at.before);
    return scene;
  }
  scene.heading = capitalised(name_of(at.step));
  scene.paragraphs.push_back({text_of(at), ""});
  scene.board = step_figure(at.step, at.before, scene.heading);
  return scene;
}

// Scenes for path[from, to): one for each run of routine steps, one for each other step.
void add_stretch(const std::vector<PathScene>& path, std::size_t from, std::size_t to, const std::string& first_heading, std::vector<Scene>& scenes) {
  std::string heading = first_heading;
  for (std::size_t at = from; at < to;) {
    if (!is_routine(path[at].step)) {
      scenes.push_back(hard_scene(path[at++]));
      continue;
    }
    std::size_t end = at;
    while (end < to && is_routine(path[end].step)) ++end;
    scenes.push_back(routine_scene(path, at, end, heading));
    heading = "Carry on";
    at = end;
  }
}

// The last run of singles is not spelled out: it would give the solution away.
std::size_t start_of_last_singles(const std::vector<PathScene>& path, std::size_t earliest) {
  std::size_t start = path.size();
  while (start > earliest && is_single(path[start - 1].step)) --start;
  return start;
}

Scene ending_scene(const Position& position, bool is_solved_by_path) {
  Scene scene;
  const int open = position.open().size();
  scene.heading = is_solved_by_path ? "The rest is singles" : "Here the path stops";
  if (is_solved_by_path) {
    scene.paragraphs.push_back({"From here singles alone fill the " + counted(open, "open cell") + ". Try it before you look at the solution.", ""});
  } else {
    scene.paragraphs.push_back({"The steps of this path lead no further; " + counted(open, "cell") + (open == 1 ? " is" : " are") + " still open.", ""});
  }
  Figure board(position);
  board.title = scene.heading;
  board.candidates = position.open();
  describe(board);
  scene.board = std::move(board);
  return scene;
}

Scene summary_scene(const DraftInput& input, Position solved, bool is_solved_by_path) {
  const PathScene& key = input.path[input.key];
  const auto& reason = *std::get_if<BalanceReason>(&key.step.reason);
  const int struck = static_cast<int>(key.step.eliminations.size());
  Scene scene;
  scene.heading = "Summary";
  scene.paragraphs.push_back({"The idea of this lesson was one balance: " + house_names(key.before.shape(), balance_sides(reason).left) + " against " +
                                  house_names(key.before.shape(), balance_sides(reason).right) +
                                  ". What lies in both pans cancels, known digits cancel, and what then has to go into the open cells strikes out " +
                                  counted(struck, "candidate") + ".",
                              ""});
  std::string text = "The whole path has " + counted(static_cast<int>(input.path.size()), "step") + "; the balance is step " + to_text(static_cast<int>(input.key) + 1) + ". ";
  if (!is_solved_by_path) text += "It does not reach the end: the solution below comes from a complete search.";
  scene.paragraphs.push_back({text, ""});
  scene.board = balance_figure(reason, key.before, key.step.eliminations);
  Figure answer(std::move(solved));
  answer.title = "Solution";
  describe(answer);
  scene.answer = std::move(answer);
  scene.note = "Ask the audience to tell the argument in one sentence before you show the solution.";
  return scene;
}

}  // namespace

Result<Document> draft_lesson(const DraftInput& input) {
  if (input.key >= input.path.size() || !std::holds_alternative<BalanceReason>(input.path[input.key].step.reason)) {
    return Error{ErrorCode::kBadArgument, "the step chosen as the key of the lesson is no balance", "choose a step of the path that is a balance", {}};
  }
  Result<Position> solved = solved_position(input);
  if (!solved) return solved.error();
  const PathScene& key = input.path[input.key];
  const Shape& shape = input.puzzle.shape();
  Document document;
  document.title = input.title.empty() ? balance_headline(*std::get_if<BalanceReason>(&key.step.reason), shape) : input.title;
  document.puzzle = givens_line(input.puzzle);
  document.facts = input.facts;
  document.scenes.push_back(puzzle_scene(input));
  add_stretch(input.path, 0, input.key, "First scan", document.scenes);
  document.scenes.back().paragraphs.push_back({"Now comes the balance of this lesson.", ""});
  for (Scene& scene : balance_scenes(key.step, key.before)) document.scenes.push_back(std::move(scene));
  const std::size_t last_singles = start_of_last_singles(input.path, input.key + 1);
  add_stretch(input.path, input.key + 1, last_singles, "What follows at once", document.scenes);
  const bool is_solved_by_path = after(input.path.back()).is_complete();
  const Position at_end = last_singles < input.path.size() && is_solved_by_path ? input.path[last_singles].before : after(input.path.back());
  if (!at_end.is_complete()) document.scenes.push_back(ending_scene(at_end, is_solved_by_path));
  document.scenes.push_back(summary_scene(input, std::move(solved).value(), is_solved_by_path));
  return document;
}

}  // namespace cp
