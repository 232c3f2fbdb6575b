// SPDX-License-Identifier: Apache-2.0
#include "cli/lesson_command.h"

#include "cli/command.h"
#include "cli/lesson_folder.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"
#include "cli/stop_wish.h"

namespace cp::cli {

namespace {

struct Words {
  std::string puzzle;
  std::string folder;
  std::string title;
  std::string left;
  std::string right;
  int max_slack = 1;
  std::string idea;
  std::string language;
  bool notes = false;
  bool json = false;
  FileWords files;
};

std::string show(const Json& made) {
  const Json& key = made.at("key");
  std::string text;
  if (made.contains("page")) {
    text += "The lesson is in " + made.at("page").get<std::string>() + "\n";
    const std::string idea = key.contains("left") ? "the balance " + joined_texts(key.at("left")) + " against " + joined_texts(key.at("right")) : key.at("technique").get<std::string>();
    text += wrapped("Open it in a browser and go from scene to scene with the arrow keys. Look at the scenes on " + idea + ", step " + std::to_string(key.at("step").get<int>()) + " of " + std::to_string(made.at("steps").get<int>()) +
                    ": it strikes out " + candidates_text(key.at("eliminations"), "<>") + ".");
  }
  if (made.contains("figures")) text += std::to_string(made.at("figures").size()) + " figures (SVG) are in the folder figures beside it.\n";
  if (!made.contains("files")) return text;
  for (const Json& name : made.at("files")) text += name.get<std::string>() + "\n";
  return text;
}

int run(const Words& words) {
  const auto puzzle = single_puzzle(words.puzzle);
  if (!puzzle) return fail(puzzle.error(), words.json, {words.puzzle, ""}, "puzzle");
  return make_lesson({*puzzle, words.title, words.notes, words.max_slack, words.left, words.right, words.idea, words.language}, words.folder, words.json, "", words.files);
}

}  // namespace

namespace {

// What a message about a field of the request is about.
Source source_of(const api::LessonRequest& request, const std::string& field, const std::string& puzzle_name) {
  if (field == "puzzle") return {request.puzzle, puzzle_name};
  if (field == "left") return {request.left, "--left"};
  if (field == "right") return {request.right, "--right"};
  if (field == "idea") return {request.idea, "--idea"};
  if (field == "language") return {request.language, "--language"};
  return {};
}

// What --json prints: the page and the figures by name, other files in a list.
Json made_json(const std::string& folder, const WrittenFolder& written, const Json& answer) {
  Json made = Json::object();
  Json figures = Json::array();
  Json others = Json::array();
  for (const std::string& name : written.names) {
    const std::string path = (std::filesystem::path(folder.empty() ? "." : folder) / name).string();
    if (name == "index.html") {
      made["page"] = path;
    } else if (name.starts_with("figures/")) {
      figures.push_back(path);
    } else {
      others.push_back(path);
    }
  }
  if (!figures.empty()) made["figures"] = std::move(figures);
  if (!others.empty()) made["files"] = std::move(others);
  for (const char* key : {"title", "key", "steps", "solved"}) made[key] = answer.at(key);
  return made;
}

}  // namespace

int make_lesson(const api::LessonRequest& request, const std::string& folder, bool as_json, const std::string& puzzle_name, const FileWords& files) {
  auto wishes = read_wishes(files, {FileKind::kPage, FileKind::kFigures});
  if (!wishes) return fail(wishes.error(), as_json, {files.only, "--only"}, "only");
  wishes.value().has_notes = request.notes;
  if (auto missing = missing_for(*wishes)) return fail(*missing, as_json);
  const api::LessonParts parts = api::lesson_parts(request);
  const api::Answer& answer = parts.answer;
  if (!parts.document) return fail(*answer.error, as_json, source_of(request, answer.field, puzzle_name), answer.field);
  FolderPlan plan{file_jobs(*parts.document, *wishes), Json::object(), !files.only.empty()};
  for (const char* key : {"title", "steps", "key"}) plan.about[key] = answer.json.at(key);
  const auto written = write_folder(folder, plan);
  if (!written) return fail(written.error(), as_json);
  if (written->signal != 0) {
    complain(Error{ErrorCode::kLimit, "stopped", "the files that were complete stay; the same command finishes the lesson", {}});
    end_by(written->signal);
  }
  const Json made = made_json(folder, *written, answer.json);
  if (!say(as_json ? api::to_line(made) + "\n" : show(made))) return cannot_say();
  return static_cast<int>(answer.outcome);
}

void add_file_options(CLI::App& command, FileWords& words) {
  command.add_option("--only", words.only, "the kinds of files to make: page, figures, handout, stills, captions, chapters, script, description, video")->type_name("KINDS");
  command.add_option("--paper", words.paper, "the paper of the handout: a4 or letter")->type_name("SIZE")->capture_default_str();
  command.add_option("--size", words.size, "the height of the stills in pixels: 1080 or 2160")->type_name("N")->capture_default_str();
  command.add_flag("--transparent", words.is_transparent, "stills without a ground, to lay over a film");
}

void add_lesson(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("lesson", "Write an illustrated lesson on the key balance of a puzzle");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp);
  command->add_option("-o,--output", words->folder, "the folder for the lesson; new, empty, or an earlier lesson to replace")->type_name("DIR");
  command->add_option("--idea", words->idea, "what the lesson is about: balance, or the id of a technique")->type_name("TECHNIQUE");
  command->add_option("--language", words->language, "the language of the words: en or de")->type_name("TAG");
  command->add_option("--title", words->title, "the title of the page; otherwise made from the balance")->type_name("TEXT");
  command->add_option("--max-slack", words->max_slack, "free slack that balances may have: 0, 1 or 2")->type_name("N")->capture_default_str();
  CLI::Option* left = command->add_option("--left", words->left, "choose the balance: houses of the left pan, as in r1,r2")->type_name("HOUSES");
  CLI::Option* right = command->add_option("--right", words->right, "houses of the right pan")->type_name("HOUSES");
  left->needs(right);
  right->needs(left);
  command->add_flag("--notes", words->notes, "print the notes for the teacher on the page too");
  add_file_options(*command, words->files);
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/lesson.md)");
  command->footer(
      "Exit code 0: the lesson is written; 2: no balance says anything; 64: no proper puzzle, or the folder cannot be used.\n"
      "Examples:\n"
      "  counterpoise lesson puzzle.txt -o my-lesson\n"
      "  counterpoise lesson puzzle.txt -o my-lesson --left c1,c2 --right r3,b7\n"
      "  counterpoise lesson puzzle.txt -o my-lesson --title \"Two rows against two columns\" --notes\n"
      "  counterpoise lesson draft puzzle.txt -o my.lesson   (words to edit; then lesson check, lesson build)\n"
      "  counterpoise lesson puzzle.txt -o my-lesson --only handout,stills --paper letter --size 2160\n");
  add_lesson_texts(*command, program);
  command->callback([words, command, &program] {
    if (!command->get_subcommands().empty()) return;
    if (words->puzzle.empty()) throw CLI::RequiredError("PUZZLE");
    if (words->folder.empty()) throw CLI::RequiredError("--output");
    program.exit_code = run(*words);
  });
}

}  // namespace cp::cli
