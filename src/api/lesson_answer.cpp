// SPDX-License-Identifier: Apache-2.0
#include "api/lesson_parts.h"

#include <set>

#include "api/balance_json.h"
#include "api/pans.h"
#include "api/parts.h"
#include "api/storyline.h"
#include "api/technique_names.h"
#include "base/text.h"
#include "deduce/basics.h"
#include "exact/minimal.h"
#include "export/captions.h"
#include "export/page_html.h"
#include "export/scene_times.h"
#include "export/script_text.h"
#include "grid/notation.h"
#include "lesson/build.h"
#include "lesson/draft.h"
#include "path/alternatives.h"
#include "speak/words.h"
#include "verify/step_check.h"

namespace cp::api {

namespace {

// The puzzle with its solution: a lesson is about a proper puzzle.
struct Subject {
  Position puzzle;
  FullGrid solution;
};

Result<Subject> subject_of(const std::string& text) {
  const auto position = parse_position(text);
  if (!position) return position.error();
  const Properness found = properness_of(*position);
  using Solutions = Properness::Solutions;
  if (found.solutions == Solutions::kUnknown) {
    return Error{ErrorCode::kLimit, "whether the puzzle has exactly one solution was not settled", "try a smaller grid or add givens", {}};
  }
  if (found.solutions == Solutions::kOne) return Subject{*position, found.grids.front()};
  std::string message = found.solutions == Solutions::kNone ? "the puzzle has no solution" : "the puzzle has more than one solution";
  if (position->has_clash()) message += ": " + clash_in_words(*position);
  return Error{ErrorCode::kNotProper, message, "a lesson needs a puzzle with exactly one solution", {}};
}

// Every step must replay, and must agree with the solution; anything else is our fault.
std::optional<Error> unsound_step(const Path& path, const FullGrid& solution) {
  for (std::size_t i = 0; i < path.steps.size(); ++i) {
    const PathStep& at = path.steps[i];
    std::string fault;
    if (const CheckResult replay = check_step(at.before, at.step); !replay.holds) fault = replay.why.empty() ? "no reason given" : replay.why;
    for (const Candidate& placed : at.step.placements) {
      if (!solution.has(placed)) fault = "a placement contradicts the solution";
    }
    for (const Candidate& gone : at.step.eliminations) {
      if (solution.has(gone)) fault = "an elimination contradicts the solution";
    }
    if (fault.empty()) continue;
    return Error{ErrorCode::kBug, "step " + to_text(static_cast<long long>(i) + 1) + " (" + std::string(at.step.technique) + ") does not verify: " + fault,
                 "please report this puzzle; no lesson was made", {}};
  }
  return std::nullopt;
}

std::vector<std::string> facts_of(const Subject& subject, const Storyline& storyline) {
  std::vector<std::string> facts;
  if (is_minimal(subject.puzzle)) facts.emplace_back("It is minimal: without any one of its givens it would have more than one solution.");
  PathOptions plain;
  plain.only = basic_families();
  const auto without = find_path(subject.puzzle, plain);
  if (!without) return facts;
  if (without->end == PathEnd::kSolved) {
    facts.emplace_back("Singles, locked candidates, subsets and basic fish solve it without any balance. The balance of this lesson is another way to see it, not a need.");
  } else {
    facts.push_back("Singles, locked candidates, subsets and basic fish alone stop with " + counted(without->end_position.open().size(), "cell") + " still open.");
    if (!storyline.is_needed) facts.emplace_back("The balance of this lesson comes earlier than the path needs it.");
  }
  return facts;
}

constexpr std::size_t kAlternativesTold = 3;

// What else gives the first conclusion of the key: up to three, the easiest first, one of each technique.
void add_alternatives(DraftInput& input, int most_free_slack) {
  const PathStep& key = input.path[input.key];
  if (key.step.eliminations.empty()) return;
  AlternativesOptions options;
  options.most_free_slack = most_free_slack;
  options.limit = 0;
  auto selection = select_techniques({}, {std::string(kUniquenessGroup), "forcing"});
  if (!selection) return;
  const Alternatives found = alternatives(key.before, key.step.eliminations.front(), *selection, options);
  input.asked_alternatives = true;
  std::set<std::string_view> seen = {key.step.technique};
  for (const PathStep& other : found.steps) {
    if (!seen.insert(other.step.technique).second) continue;
    ++input.alternatives_found;
    if (input.alternatives.size() < kAlternativesTold) input.alternatives.push_back(other);
  }
}

DraftInput draft_input(const Subject& subject, const Storyline& storyline, const LessonRequest& request) {
  DraftInput input(subject.puzzle);
  input.title = request.title;
  input.source = request.source;
  input.known = request.known;
  input.teaches = request.teaches;
  if (!request.language.empty()) input.language = request.language;
  input.path = storyline.path.steps;
  input.key = storyline.key;
  input.is_needed = storyline.is_needed;
  input.is_minimal = is_minimal(subject.puzzle);
  PathOptions plain;
  plain.only = basic_families();
  if (const auto without = find_path(subject.puzzle, plain)) input.basics_open = without->end_position.open().size();
  add_alternatives(input, request.max_slack);
  return input;
}

Json files_json(const Document& document, bool with_notes) {
  Json files = Json::array();
  const auto add = [&files](std::string name, std::string text) {
    Json file = Json::object();
    file["name"] = std::move(name);
    file["text"] = std::move(text);
    files.push_back(std::move(file));
  };
  add("index.html", page_html(document, PageOptions{with_notes, {}}));
  for (ExportFile& figure : figure_files(document)) add("figures/" + figure.name, std::move(figure.text));
  return files;
}

Json key_json(const Storyline& storyline) {
  const PathStep& at = storyline.path.steps[storyline.key];
  Json json = Json::object();
  json["step"] = storyline.key + 1;
  json["needed"] = storyline.is_needed;
  if (const auto* reason = std::get_if<BalanceReason>(&at.step.reason)) {
    json.update(balance_json(at.before, at.step.eliminations, *reason));
    return json;
  }
  json["technique"] = at.step.technique;
  json["placements"] = candidates_json(at.before.shape(), at.step.placements);
  json["eliminations"] = candidates_json(at.before.shape(), at.step.eliminations);
  return json;
}

}  // namespace

namespace {

// A draft with what is said about it, or the answer that there is none.
struct Drafted {
  Answer answer;
  std::optional<Lesson> lesson;
};
Drafted refused(Answer answer) { return {std::move(answer), std::nullopt}; }

Result<Storyline> storyline_for(const Position& puzzle, const LessonRequest& request, const std::vector<Weight>& chosen) {
  if (!chosen.empty()) return storyline_on(puzzle, chosen, request.max_slack);
  if (request.idea.empty() || request.idea == kBalanceId) return storyline_of(puzzle, request.max_slack);
  return storyline_with(puzzle, request.idea, request.max_slack);
}

std::optional<Answer> wrong_idea(const LessonRequest& request) {
  if (request.idea.empty() || request.idea == kBalanceId) return std::nullopt;
  if (!request.left.empty()) return refuse(Error{ErrorCode::kBadArgument, "houses are chosen for a balance, not for a technique", "leave the idea or the houses out", {}}, "idea");
  if (find_technique(request.idea)) return std::nullopt;
  if (auto unknown = unknown_technique("idea", {request.idea})) return unknown;
  return refuse(Error{ErrorCode::kBadName, "'" + request.idea + "' is a family, not a technique", "name one technique, as in x-wing", {0, request.idea.size(), 1, 1}}, "idea");
}

Drafted draft(const LessonRequest& request) {
  if (auto wrong = out_of_range("max_slack", request.max_slack, 0, kMostFreeSlack)) return refused(std::move(*wrong));
  if (auto wrong = wrong_idea(request)) return refused(std::move(*wrong));
  if (auto wrong = unspoken_language(request.language)) return refused(refuse(std::move(*wrong), "language"));
  const auto subject = subject_of(request.puzzle);
  if (!subject) return refused(refuse(subject.error(), "puzzle"));
  std::vector<Weight> chosen;
  if (!request.left.empty() || !request.right.empty()) {
    Pans pans = read_full_pans(subject->puzzle.shape(), request.left, request.right);
    if (!pans.is_ok()) return refused(std::move(pans.fault));
    chosen = std::move(pans.weights);
  }
  const auto storyline = storyline_for(subject->puzzle, request, chosen);
  if (!storyline) return refused(refuse(storyline.error(), "puzzle"));
  if (auto fault = unsound_step(storyline->path, subject->solution)) return refused(refuse(std::move(*fault)));
  auto lesson = draft_lesson(draft_input(*subject, *storyline, request));
  // Whatever the drafting room refuses here was put together here, so it is no fault of the request.
  if (!lesson) return refused(refuse(Error{ErrorCode::kBug, "the lesson could not be drafted: " + lesson.error().message, "please report this puzzle", {}}));
  Answer answer;
  answer.json["title"] = lesson->title;
  answer.json["solved"] = storyline->path.end == PathEnd::kSolved;
  answer.json["steps"] = storyline->path.steps.size();
  answer.json["key"] = key_json(*storyline);
  answer.json["facts"] = facts_of(*subject, *storyline);
  return {std::move(answer), std::move(lesson).value()};
}

}  // namespace

// Drafts speak the languages of the catalogue of sentences.
std::optional<Error> unspoken_language(std::string_view language) {
  if (language.empty()) return std::nullopt;
  std::vector<std::string> known;
  for (const std::string_view spoken : word_languages()) {
    if (language == spoken) return std::nullopt;
    known.emplace_back(spoken);
  }
  return Error{ErrorCode::kBadName, "there are no words in '" + std::string(language) + "'", "the languages of drafts are " + listed(known) + "; a draft can be translated, any tag may stand in the lesson", {0, language.size(), 1, 1}};
}

LessonParts lesson_parts(const LessonRequest& request) {
  Drafted drafted = draft(request);
  if (!drafted.lesson) return {std::move(drafted.answer), std::nullopt};
  BuildResult built = build_lesson(*drafted.lesson);
  if (const auto* stop = std::get_if<BuildStop>(&built)) {
    return {refuse(Error{ErrorCode::kBug, "the draft does not build: " + stop->error.message, "please report this puzzle", {}}), std::nullopt};
  }
  auto& document = std::get<Document>(built);
  std::string text = print_lesson(*drafted.lesson);
  for (const Json& fact : drafted.answer.json["facts"]) {
    document.facts.push_back(fact.get<std::string>());
    text += document.facts.back() + "\n";
  }
  return {std::move(drafted.answer), std::move(document), std::move(text)};
}

Answer lesson_draft(const LessonRequest& request) {
  Drafted drafted = draft(request);
  if (drafted.lesson) drafted.answer.json["lesson"] = print_lesson(*drafted.lesson);
  return std::move(drafted.answer);
}

std::vector<SceneSpan> scene_spans(const Document& document) {
  std::vector<SceneSpan> spans;
  for (const SceneTime& time : scene_times(document)) spans.push_back({time.start, time.seconds});
  return spans;
}

std::vector<TextFile> text_files(const Document& document, bool with_notes, std::string_view engine, const LessonPlace& place) {
  std::vector<TextFile> files;
  files.push_back({"index.html", page_html(document, PageOptions{with_notes, engine, {place.series, place.series_title}, {place.previous, place.previous_title}, {place.next, place.next_title}})});
  for (ExportFile& figure : figure_files(document)) files.push_back({"figures/" + figure.name, std::move(figure.text)});
  files.push_back({"captions.vtt", captions_vtt(document)});
  files.push_back({"chapters.vtt", chapters_vtt(document)});
  files.push_back({"chapters.txt", chapter_list(document)});
  files.push_back({"script.md", script_markdown(document)});
  files.push_back({"description.txt", description_text(document)});
  return files;
}

Answer lesson(const LessonRequest& request) {
  LessonParts parts = lesson_parts(request);
  if (parts.document) parts.answer.json["files"] = files_json(*parts.document, request.notes);
  return std::move(parts.answer);
}

}  // namespace cp::api
