// SPDX-License-Identifier: Apache-2.0
#include "cli/series_plan_command.h"

#include <algorithm>
#include <filesystem>

#include "api/commands.h"
#include "cli/record_lines.h"
#include "cli/report.h"
#include "cli/whole_file.h"
#include "course/portrait.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

struct Words {
  std::string records;
  std::string folder;
  std::string title = "A course";
  std::string language = "en";
  CourseWish wish;
  int lessons = 12;
  bool json = false;
};

std::string two_digits(std::size_t number) { return (number < 10 ? "0" : "") + std::to_string(number); }

Json lesson_json(const CourseLesson& lesson, const CourseCandidate& candidate) {
  Json json = Json::object();
  json["idea"] = lesson.idea;
  json["puzzle"] = candidate.record.puzzle;
  json["line"] = candidate.line;
  json["new"] = lesson.new_techniques;
  json["alternatives"] = lesson.alternatives;
  json["steps"] = candidate.record.path->steps;
  json["hardest"] = candidate.record.path->hardest;
  json["effort"] = candidate.record.path->effort;
  json["points"] = {{"own", lesson.own_points}, {"rise", lesson.rise_points}, {"look", lesson.look_points}};
  json["why"] = lesson.why;
  return json;
}

Json course_json(const Course& course, const std::vector<CourseCandidate>& candidates) {
  Json json = Json::object();
  json["usable"] = course.usable;
  json["lessons"] = Json::array();
  for (const CourseLesson& lesson : course.lessons) json["lessons"].push_back(lesson_json(lesson, candidates[lesson.candidate]));
  json["gaps"] = Json::array();
  for (const CourseGap& gap : course.gaps) json["gaps"].push_back({{"idea", gap.idea}, {"with_others", gap.with_others}, {"others", gap.others}, {"why", gap.why}});
  return json;
}

std::string show(const Json& answer) {
  std::string text;
  int number = 0;
  for (const Json& lesson : answer.at("lessons")) {
    text += std::to_string(++number) + ". " + lesson.at("idea").get<std::string>() + "  " + lesson.at("puzzle").get<std::string>() + "\n";
    text += wrapped(lesson.at("why").get<std::string>(), "   ");
    if (lesson.contains("file")) text += "   " + lesson.at("file").get<std::string>() + "\n";
    if (lesson.contains("no_draft")) text += wrapped("No draft: " + lesson.at("no_draft").get<std::string>(), "   ");
  }
  for (const Json& gap : answer.at("gaps")) text += wrapped("Gap: " + gap.at("why").get<std::string>() + ".", "");
  return text;
}

// The lesson text with another level: lessons of a series are ordered by it, and the plan has decided the order.
std::string with_level(std::string text, int& least) {
  const std::size_t at = text.find("\nlevel: ");
  if (at == std::string::npos) return text;
  const std::size_t digit = at + 8;
  least = std::max(least, text[digit] - '0');
  text[digit] = static_cast<char>('0' + least);
  return text;
}

// Drafts, about.series, the map and the plan. The names of the drafts go into the answer.
std::optional<Error> write_folder(const Words& words, const Course& course, const std::vector<CourseCandidate>& candidates, Json& answer) {
  const fs::path goal(words.folder);
  std::error_code failed;
  if (fs::exists(goal, failed) && !(fs::is_directory(goal, failed) && fs::is_empty(goal, failed))) {
    return Error{ErrorCode::kCannotWrite, "'" + words.folder + "' is there already", "choose a new folder, or empty it: drafts that were edited must not be lost", {}};
  }
  if (auto wrong = make_folder(goal)) return wrong;
  int level = 1;
  for (std::size_t i = 0; i < course.lessons.size(); ++i) {
    const CourseLesson& lesson = course.lessons[i];
    api::LessonRequest request;
    request.puzzle = candidates[lesson.candidate].record.puzzle;
    request.idea = lesson.new_techniques.front();
    request.language = words.language;
    request.known = lesson.known;
    request.teaches = lesson.new_techniques;
    if (std::find(request.teaches.begin(), request.teaches.end(), lesson.idea) == request.teaches.end()) request.teaches.push_back(lesson.idea);
    const api::Answer draft = api::lesson_draft(request);
    Json& told = answer["lessons"][i];
    if (!draft.is_ok() || !draft.json.contains("lesson")) {
      told["no_draft"] = draft.is_ok() ? "the idea is not on the path that lessons take" : draft.error->message;
      continue;
    }
    const std::string name = two_digits(i + 1) + "-" + request.idea + ".lesson";
    if (auto wrong = write_whole(goal / name, kPermissions, with_level(draft.json.at("lesson").get<std::string>(), level))) return wrong;
    told["file"] = (goal / name).string();
  }
  if (auto wrong = write_whole(goal / "about.series", kPermissions, about_course(course, words.wish, words.title, words.language))) return wrong;
  if (auto wrong = write_whole(goal / "map.svg", kPermissions, course_map_svg(map_of(course, candidates, words.title), SvgUse::kFile, "map"))) return wrong;
  return write_whole(goal / "plan.json", kPermissions, answer.dump(1) + "\n");
}

int run(Words& words) {
  if (words.lessons < 1) return fail({ErrorCode::kBadArgument, "--lessons is 1 or more", "twelve is usual", {}}, words.json);
  if (const auto unspoken = api::unspoken_language(words.language)) return fail(*unspoken, words.json, {words.language, "--language"}, "language");
  words.wish.most_lessons = static_cast<std::size_t>(words.lessons);
  std::vector<CourseCandidate> candidates;
  const auto error = for_each_record(words.records, [&](ScanLine line, std::uint64_t number) {
    if (line.record && line.record->is_solved()) candidates.push_back({std::move(*line.record), line.line > 0 ? line.line : number});
  });
  if (error) return fail(*error, words.json);
  const auto course = choose_course(candidates, words.wish);
  if (!course) return fail(course.error(), words.json);
  Json answer = course_json(*course, candidates);
  if (!words.folder.empty()) {
    if (auto failed = write_folder(words, *course, candidates, answer)) return fail(*failed, words.json);
  }
  const int code = course->gaps.empty() && !course->lessons.empty() ? 0 : 2;
  const std::string told = course->lessons.empty() ? "No puzzle here has exactly one new idea.\n" : "";
  const std::string next = words.folder.empty() || course->lessons.empty() ? "" : "Edit the drafts, then: counterpoise series build " + words.folder + " -o FOLDER\n";
  return say(words.json ? api::to_line(answer) + "\n" : told + show(answer) + next) ? code : cannot_say();
}

}  // namespace

void add_series_plan(CLI::App& series, Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = series.add_subcommand("plan", "Choose puzzles of a scanned collection that teach a list of ideas, one new idea a lesson");
  command->add_option("RECORDS", words->records, "the lines of a scan; plain, gzip or zstd; '-': standard input")->required();
  command->add_option("--idea", words->wish.ideas, "a technique, family, 'uniqueness' or 'balance' to teach; may be repeated, in the order of teaching; without it: what the collection offers")
      ->type_name("NAME")
      ->allow_extra_args(false);
  command->add_option("--assume", words->wish.assumes, "what pupils bring along (usually single); may be repeated")->type_name("NAME")->allow_extra_args(false);
  command->add_option("--lessons", words->lessons, "at most so many, when no ideas are named")->type_name("N")->capture_default_str();
  command->add_option("-o,--output", words->folder, "a new folder for drafts of the lessons, about.series, the map (SVG) and the plan")->type_name("FOLDER");
  command->add_option("--title", words->title, "of the series")->capture_default_str();
  command->add_option("--language", words->language, "of the drafts: en or de")->type_name("NAME")->capture_default_str();
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/series.md)");
  command->footer(
      "Exit code 0: done; 2: an idea has no puzzle; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise series plan collection.jsonl --assume single --assume locked\n"
      "  counterpoise series plan collection.jsonl --idea naked-pair --idea x-wing --idea balance --assume single --assume locked -o course\n");
  command->callback([words, &program] { program.exit_code = run(*words); });
}

}  // namespace cp::cli
