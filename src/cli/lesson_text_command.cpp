// SPDX-License-Identifier: Apache-2.0
// lesson draft, lesson check, lesson build: lessons as text files.
#include <filesystem>

#include "base/text.h"
#include "cli/lesson_command.h"
#include "cli/lesson_output.h"
#include "cli/puzzle_file.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"
#include "cli/whole_file.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

struct DraftWords {
  api::LessonRequest request;
  std::string puzzle;
  std::string file;
  bool replace = false;
  bool json = false;
};

int run_draft(DraftWords& words) {
  const auto puzzle = single_puzzle(words.puzzle);
  if (!puzzle) return fail(puzzle.error(), words.json, {words.puzzle, ""}, "puzzle");
  words.request.puzzle = *puzzle;
  const api::Answer answer = api::lesson_draft(words.request);
  if (!answer.is_ok()) return fail(*answer.error, words.json, source_of(words.request, answer.field), answer.field);
  const std::string text = answer.json.at("lesson").get<std::string>();
  if (!words.file.empty()) {
    if (exists(words.file) && !words.replace) {
      return fail(Error{ErrorCode::kCannotWrite, "there is a file '" + words.file + "' already", "choose another name, or say --replace: what was edited there would be lost", {}}, words.json);
    }
    if (auto failed = write_whole(words.file, "choose another name", text)) return fail(*failed, words.json);
  }
  if (words.json) return say(api::to_line(answer.json) + "\n") ? 0 : cannot_say();
  if (words.file.empty()) return say(text) ? 0 : cannot_say();
  const std::string told = "The draft is in " + words.file + "\nEdit its words, then: counterpoise lesson build " + words.file + " -o FOLDER\n";
  return say(told) ? 0 : cannot_say();
}

void add_draft(CLI::App& lesson, Program& program) {
  auto words = std::make_shared<DraftWords>();
  CLI::App* command = lesson.add_subcommand("draft", "Write the first draft of a lesson as text to edit");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_option("-o,--output", words->file, "the file to write, as in my.lesson; without it the text comes out")->type_name("FILE");
  add_request_options(*command, words->request);
  command->add_flag("--replace", words->replace, "write over the file if it is there");
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/lesson_document.md)");
  command->footer(
      "Exit code 0: done; 2: the idea is not on the path; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise lesson draft puzzle.txt -o ring.lesson --left c1,c2,c8,c9 --right r3,r7,b4,b6\n"
      "  counterpoise lesson draft puzzle.txt --idea x-wing --language de\n");
  command->callback([words, &program] { program.exit_code = run_draft(*words); });
}

struct TextWords {
  std::string file;
  std::string folder;
  bool notes = false;
  bool json = false;
  FileWords files;
};

std::string clock_text(int seconds) {
  const std::string rest = std::to_string(seconds % 60);
  return std::to_string(seconds / 60) + ":" + (rest.size() < 2 ? "0" : "") + rest;
}

std::string show_check(const Json& answer) {
  std::string text = answer.at("title").get<std::string>() + ": every step and claim is proved.\n";
  for (const Json& scene : answer.at("scenes")) {
    text += "  " + clock_text(scene.at("seconds").get<int>()) + "  " + scene.at("heading").get<std::string>();
    const auto claims = static_cast<int>(scene.at("claims").size());
    const int exercises = scene.at("exercises").get<int>();
    if (claims > 0) text += " (" + counted(claims, "claim") + ")";
    if (exercises > 0) text += " (" + counted(exercises, "question") + ")";
    text += "\n";
  }
  return text + "  " + clock_text(answer.at("seconds").get<int>()) + "  in all\n";
}

int run_check(const TextWords& words) {
  const auto text = text_of_file(words.file);
  if (!text) return fail(text.error(), words.json);
  const api::Answer answer = api::lesson_check({*text, false});
  if (!answer.is_ok()) return complain_of_lesson(answer, *text, words.file, words.json);
  return say(words.json ? api::to_line(answer.json) + "\n" : show_check(answer.json)) ? 0 : cannot_say();
}

int run_build(const TextWords& words) {
  LessonOutput output;
  output.as_json = words.json;
  if (const auto refused = read_output(words.files, words.notes, output)) return *refused;
  const auto text = text_of_file(words.file);
  if (!text) return fail(text.error(), words.json);
  const api::LessonParts parts = api::lesson_text_parts(*text);
  if (!parts.document) return complain_of_lesson(parts.answer, *text, words.file, words.json);
  Json about = Json::object();
  about["title"] = parts.document->title;
  std::vector<std::string> names;
  if (const auto ended = write_lesson(parts, words.folder, output, std::move(about), names)) return *ended;
  Json made = parts.answer.json;
  made["files"] = Json::array();
  std::string told;
  for (const std::string& name : names) {
    made["files"].push_back((fs::path(words.folder) / name).string());
    if (!name.starts_with("figures/")) told += (fs::path(words.folder) / name).string() + "\n";
  }
  return say(words.json ? api::to_line(made) + "\n" : told) ? 0 : cannot_say();
}

void add_check_and_build(CLI::App& lesson, Program& program) {
  auto check = std::make_shared<TextWords>();
  CLI::App* command = lesson.add_subcommand("check", "Read a lesson and prove every step and claim in it again");
  command->add_option("FILE", check->file, "the lesson, or - for standard input")->required();
  command->add_flag("--json", check->json, "answer in JSON (docs/formats/lesson_document.md)");
  command->footer("Exit code 0: all is proved; 1: something is false; 2: something does not follow; 64: the text cannot be read.\n");
  command->callback([check, &program] { program.exit_code = run_check(*check); });
  auto build = std::make_shared<TextWords>();
  command = lesson.add_subcommand("build", "Make the page and the other files of a written lesson");
  command->add_option("FILE", build->file, "the lesson, or - for standard input")->required();
  command->add_option("-o,--output", build->folder, "the folder for the lesson; new, empty, or an earlier lesson to replace")->type_name("DIR")->required();
  command->add_flag("--notes", build->notes, "print the notes for the teacher on the page too");
  add_file_options(*command, build->files);
  command->add_flag("--json", build->json, "answer in JSON (docs/formats/lesson_document.md)");
  command->footer(
      "Exit code 0: the files are written; 1: something is false; 2: something does not follow; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise lesson build ring.lesson -o ring\n"
      "  counterpoise lesson build ring.lesson -o ring --only page,handout --paper letter\n");
  command->callback([build, &program] { program.exit_code = run_build(*build); });
}

}  // namespace

Result<std::string> text_of_file(const std::string& name) {
  std::vector<Line> lines;
  if (name == "-") {
    while (auto line = read_line(stdin, static_cast<int>(lines.size()) + 1)) lines.push_back(std::move(*line));
  } else {
    auto read = read_lines(name);
    if (!read) return read.error();
    lines = std::move(read).value();
  }
  std::string text;
  for (const Line& line : lines) text += line.text + "\n";
  return text;
}

int complain_of_lesson(const api::Answer& answer, const std::string& text, const std::string& file, bool as_json) {
  Error error = *answer.error;
  const Json& json = answer.json.at("error");
  if (json.contains("scene")) error.message = "in the scene '" + json.at("scene").get<std::string>() + "': " + error.message;
  if (as_json && !say(api::to_line(answer.json) + "\n")) return cannot_say();
  complain(error, {text, file, true, 0});
  return static_cast<int>(answer.outcome);
}

void add_lesson_texts(CLI::App& lesson, Program& program) {
  add_draft(lesson, program);
  add_check_and_build(lesson, program);
}

}  // namespace cp::cli
