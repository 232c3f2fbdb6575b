// SPDX-License-Identifier: Apache-2.0
// series check, series build: a folder of lessons as a course.
#include <algorithm>
#include <filesystem>

#include "base/sha256.h"
#include "base/text.h"
#include "cli/bundled_series.h"
#include "cli/lesson_command.h"
#include "cli/lesson_folder.h"
#include "cli/lesson_output.h"
#include "cli/progress.h"
#include "cli/puzzle_file.h"
#include "cli/report.h"
#include "cli/series_plan_command.h"
#include "cli/whole_file.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view kAbout = "about.series";
constexpr const char* kBundled = "the bundled series";
constexpr const char* kFolderHelp = "the folder with the lessons (*.lesson) and about.series; without it the series that comes along";

struct Words {
  std::string folder;  // empty: the series that comes along
  std::string goal = "counterpoise-series";
  bool notes = false;
  bool json = false;
  FileWords files;
};

// The lessons of the folder by name; the text about the series if there is one.
Result<api::SeriesRequest> read_folder(const std::string& name) {
  if (name.empty()) return bundled_series();
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
  request.about = text->empty() ? "\n" : std::move(text).value();  // a file that is there has to say what it is
  return request;
}

int complain_of_series(const api::Answer& answer, const api::SeriesRequest& request, const Words& words) {
  const fs::path folder(words.folder.empty() ? kBundled : words.folder);
  if (answer.field == "about") return complain_of_lesson(answer, request.about, (folder / kAbout).string(), words.json);
  for (const api::SeriesRequest::Member& lesson : request.lessons) {
    if (lesson.name == answer.field) return complain_of_lesson(answer, lesson.text, (folder / (lesson.name + ".lesson")).string(), words.json);
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

// The page of a lesson leads to the page of the series and to the lessons beside it.
api::LessonPlace place_of(const api::SeriesParts& parts, std::size_t number) {
  api::LessonPlace place;
  place.series = "../index.html";
  place.series_title = parts.answer.json.at("title").get<std::string>();
  const auto address = [&parts](std::size_t other) { return "../" + parts.lessons[other].name + "/index.html"; };
  if (number > 0) {
    place.previous = address(number - 1);
    place.previous_title = parts.lessons[number - 1].document.title;
  }
  if (number + 1 < parts.lessons.size()) {
    place.next = address(number + 1);
    place.next_title = parts.lessons[number + 1].document.title;
  }
  return place;
}

// Of everything the files of the lesson are made from: its text, and what its page says of the pages beside it.
std::string digest_of(const api::SeriesParts::Member& lesson, const api::LessonPlace& place) {
  std::string whole = lesson.text;
  for (const std::string* part : {&place.series, &place.series_title, &place.previous, &place.previous_title, &place.next, &place.next_title}) whole += *part + "\n";
  return sha256_base64(whole);
}

// The whole series as one folder: the files of each lesson in a folder of its own, then the page that leads to them.
FolderPlan plan_of(const api::SeriesParts& parts, const LessonOutput& output) {
  FolderPlan plan;
  plan.keeps_others = output.keeps_others;
  plan.about = Json::object();
  plan.about["title"] = parts.answer.json.at("title");
  plan.about["lessons"] = Json::array();
  for (std::size_t i = 0; i < parts.lessons.size(); ++i) {
    const api::SeriesParts::Member& lesson = parts.lessons[i];
    plan.about["lessons"].push_back(lesson.name);
    const api::LessonPlace place = place_of(parts, i);
    plan.parts.push_back({lesson.name, Json{{"title", lesson.document.title}, {kDigest, digest_of(lesson, place)}}});
    for (FileJob& job : file_jobs(lesson.document, output.wishes, place)) {
      job.name = lesson.name + "/" + job.name;
      plan.jobs.push_back(std::move(job));
    }
  }
  plan.jobs.push_back({"index.html", [text = parts.index](const fs::path& partial, Progress&) { return write_bytes(partial, text); }});
  return plan;
}

int write_series(const Words& words, const api::SeriesParts& parts, const LessonOutput& output) {
  std::vector<std::string> names;
  if (const auto ended = write_output(words.goal, plan_of(parts, output), output, names)) return *ended;
  Json made = parts.answer.json;
  made["page"] = (fs::path(words.goal) / "index.html").string();
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
  Progress progress;
  const auto tell = [&](const std::string& name, std::size_t number) { progress.show("proving lesson " + std::to_string(number) + " of " + std::to_string(request->lessons.size()) + ": " + name); };
  const api::SeriesParts parts = api::series_parts(*request, tell);
  if (!parts.answer.is_ok()) return complain_of_series(parts.answer, *request, words);
  return write_series(words, parts, output);
}

}  // namespace

int make_bundled_series(const std::string& folder, bool has_notes, bool as_json) {
  Words words;
  words.goal = folder;
  words.notes = has_notes;
  words.json = as_json;
  return run_build(words);
}

void add_series(Program& program) {
  CLI::App* series = program.app.add_subcommand("series", "Several lessons as a course: check its order, build its pages");
  series->require_subcommand(1);
  add_series_plan(*series, program);
  auto check = std::make_shared<Words>();
  CLI::App* command = series->add_subcommand("check", "Prove every lesson of a folder again; does each need only what was taught before?");
  command->add_option("FOLDER", check->folder, kFolderHelp);
  command->add_flag("--json", check->json, "answer in JSON (docs/formats/series.md)");
  command->footer("Exit code 0: all is well; 1: something is false, or a lesson needs what was not taught; 2: something does not follow; 64: bad input.\n");
  command->callback([check, &program] { program.exit_code = run_check(*check); });
  auto build = std::make_shared<Words>();
  command = series->add_subcommand("build", "Make the pages of all lessons and the page that leads to them");
  command->add_option("FOLDER", build->folder, kFolderHelp);
  command->add_option("-o,--output", build->goal, "the folder for the pages; new, empty, or an earlier series to replace")->type_name("DIR")->capture_default_str();
  command->add_flag("--notes", build->notes, "print the notes for the teacher on the pages too");
  add_file_options(*command, build->files);
  command->add_flag("--json", build->json, "answer in JSON (docs/formats/series.md)");
  command->footer("Examples:\n  counterpoise series build\n  counterpoise series build my-lessons -o my-series --only page,handout,stills\n");
  command->callback([build, &program] { program.exit_code = run_build(*build); });
}

}  // namespace cp::cli
