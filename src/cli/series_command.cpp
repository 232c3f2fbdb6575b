// SPDX-License-Identifier: Apache-2.0
// series check, series build: a folder of lessons as a course.
#include <algorithm>
#include <filesystem>

#include "base/text.h"
#include "cli/lesson_command.h"
#include "cli/lesson_output.h"
#include "cli/puzzle_file.h"
#include "cli/report.h"
#include "cli/series_plan_command.h"
#include "cli/whole_file.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view kAbout = "about.series";
constexpr std::string_view kMade = "series.json";
constexpr const char* kPermissions = "check the permissions of the folder";

struct Words {
  std::string folder;
  std::string goal;
  bool notes = false;
  bool json = false;
  FileWords files;
};

// The lessons of the folder by name; the text about the series if there is one.
Result<api::SeriesRequest> read_folder(const std::string& name) {
  std::error_code failed;
  if (!fs::is_directory(name, failed)) return Error{ErrorCode::kNotFound, "'" + name + "' is no folder", "name the folder that holds the lessons", {}};
  std::vector<fs::path> paths;
  for (fs::directory_iterator at(name, failed), end; !failed && at != end; at.increment(failed)) {
    if (at->path().extension() == ".lesson") paths.push_back(at->path());
  }
  if (failed) return Error{ErrorCode::kNotFound, "cannot read '" + name + "': " + failed.message(), "check the permissions", {}};
  std::sort(paths.begin(), paths.end());
  api::SeriesRequest request;
  for (const fs::path& path : paths) {
    auto text = text_of_file(path.string());
    if (!text) return text.error();
    request.lessons.push_back({path.stem().string(), std::move(text).value()});
  }
  const fs::path about = fs::path(name) / kAbout;
  if (!fs::exists(about, failed)) return request;
  auto text = text_of_file(about.string());
  if (!text) return text.error();
  request.about = std::move(text).value();
  return request;
}

int complain_of_series(const api::Answer& answer, const api::SeriesRequest& request, const Words& words) {
  if (answer.field == "about") return complain_of_lesson(answer, request.about, (fs::path(words.folder) / kAbout).string(), words.json);
  for (const api::SeriesRequest::Member& lesson : request.lessons) {
    if (lesson.name == answer.field) return complain_of_lesson(answer, lesson.text, (fs::path(words.folder) / (lesson.name + ".lesson")).string(), words.json);
  }
  return fail(*answer.error, words.json);
}

std::string show(const Json& answer) {
  std::string text;
  int number = 0;
  for (const Json& lesson : answer.at("lessons")) {
    text += std::to_string(++number) + ". " + lesson.at("title").get<std::string>() + " (" + lesson.at("name").get<std::string>() + ")\n";
    text += wrapped("needs " + joined_texts(lesson.at("needs")) + "; teaches " + joined_texts(lesson.at("teaches")), "   ");
  }
  for (const Json& gap : answer.at("gaps")) text += "Gap: " + gap.at("text").get<std::string>() + ".\n";
  if (answer.at("gaps").empty()) text += "No lesson needs what was not taught before.\n";
  return text;
}

int run_check(const Words& words) {
  const auto request = read_folder(words.folder);
  if (!request) return fail(request.error(), words.json);
  const api::Answer answer = api::series_check(*request);
  if (!answer.is_ok()) return complain_of_series(answer, *request, words);
  if (!say(words.json ? api::to_line(answer.json) + "\n" : show(answer.json))) return cannot_say();
  return static_cast<int>(answer.outcome);
}

// May the series be written there? An empty or new folder, or an earlier series.
std::optional<Error> prepare(const fs::path& goal) {
  std::error_code failed;
  const bool is_there = fs::exists(goal, failed);
  if (is_there && !fs::is_directory(goal, failed)) return Error{ErrorCode::kCannotWrite, "there is a file called '" + goal.string() + "'", "choose another name for the folder", {}};
  if (is_there && !fs::is_empty(goal, failed) && !fs::exists(goal / kMade, failed)) {
    return Error{ErrorCode::kCannotWrite, "the folder '" + goal.string() + "' holds something else", "choose an empty or a new folder; nothing was changed", {}};
  }
  fs::create_directories(goal, failed);
  if (failed) return Error{ErrorCode::kCannotWrite, "cannot make '" + goal.string() + "': " + failed.message(), "choose a folder that you may write to", {}};
  return std::nullopt;
}

int write_series(const Words& words, const api::SeriesParts& parts, const LessonOutput& output) {
  const fs::path goal(words.goal);
  if (auto failed = prepare(goal)) return fail(*failed, words.json);
  Json manifest = Json::object();
  manifest["made_by"] = "counterpoise";
  manifest["title"] = parts.answer.json.at("title");
  if (auto failed = write_whole(goal / kMade, kPermissions, manifest.dump(1) + "\n")) return fail(*failed, words.json);
  for (const api::SeriesParts::Member& lesson : parts.lessons) {
    Json about = Json::object();
    about["title"] = lesson.document.title;
    std::vector<std::string> names;
    if (const auto ended = write_lesson(lesson.document, (goal / lesson.name).string(), output, std::move(about), names)) return *ended;
  }
  if (auto failed = write_whole(goal / "index.html", kPermissions, parts.index)) return fail(*failed, words.json);
  Json made = parts.answer.json;
  made["page"] = (goal / "index.html").string();
  const std::string told = "The series is in " + made["page"].get<std::string>() + "\n" + show(parts.answer.json);
  if (!say(words.json ? api::to_line(made) + "\n" : told)) return cannot_say();
  return static_cast<int>(parts.answer.outcome);
}

int run_build(const Words& words) {
  LessonOutput output;
  output.as_json = words.json;
  output.whole = "series";
  if (const auto refused = read_output(words.files, words.notes, output)) return *refused;
  const auto request = read_folder(words.folder);
  if (!request) return fail(request.error(), words.json);
  const api::SeriesParts parts = api::series_parts(*request);
  if (!parts.answer.is_ok()) return complain_of_series(parts.answer, *request, words);
  return write_series(words, parts, output);
}

}  // namespace

void add_series(Program& program) {
  CLI::App* series = program.app.add_subcommand("series", "Several lessons as a course: check its order, build its pages");
  series->require_subcommand(1);
  add_series_plan(*series, program);
  auto check = std::make_shared<Words>();
  CLI::App* command = series->add_subcommand("check", "Prove every lesson of a folder again; does each need only what was taught before?");
  command->add_option("FOLDER", check->folder, "the folder with the lessons (*.lesson) and about.series")->required();
  command->add_flag("--json", check->json, "answer in JSON (docs/formats/series.md)");
  command->footer("Exit code 0: all is well; 1: something is false, or a lesson needs what was not taught; 2: something does not follow; 64: bad input.\n");
  command->callback([check, &program] { program.exit_code = run_check(*check); });
  auto build = std::make_shared<Words>();
  command = series->add_subcommand("build", "Make the pages of all lessons and the page that leads to them");
  command->add_option("FOLDER", build->folder, "the folder with the lessons (*.lesson) and about.series")->required();
  command->add_option("-o,--output", build->goal, "the folder for the pages; new, empty, or an earlier series to replace")->type_name("DIR")->required();
  command->add_flag("--notes", build->notes, "print the notes for the teacher on the pages too");
  add_file_options(*command, build->files);
  command->add_flag("--json", build->json, "answer in JSON (docs/formats/series.md)");
  command->footer("Example:\n  counterpoise series build data/series -o my-series\n");
  command->callback([build, &program] { program.exit_code = run_build(*build); });
}

}  // namespace cp::cli
