// SPDX-License-Identifier: Apache-2.0
#include "cli/lesson_command.h"

#include "cli/command.h"
#include "cli/lesson_output.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  api::LessonRequest request;
  std::string puzzle;
  std::string folder;
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

int run(Words& words) {
  const auto puzzle = single_puzzle(words.puzzle);
  if (!puzzle) return fail(puzzle.error(), words.json, {words.puzzle, ""}, "puzzle");
  words.request.puzzle = *puzzle;
  return make_lesson(words.request, words.folder, words.json, "", words.files);
}

// What --json prints: the page and the figures by name, other files in a list.
Json made_json(const std::string& folder, const std::vector<std::string>& names, const Json& answer) {
  Json made = Json::object();
  Json figures = Json::array();
  Json others = Json::array();
  for (const std::string& name : names) {
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

Source source_of(const api::LessonRequest& request, const std::string& field, const std::string& puzzle_name) {
  if (field == "puzzle") return {request.puzzle, puzzle_name};
  if (field == "left") return {request.left, "--left"};
  if (field == "right") return {request.right, "--right"};
  if (field == "idea") return {request.idea, "--idea"};
  if (field == "language") return {request.language, "--language"};
  return {};
}

int make_lesson(const api::LessonRequest& request, const std::string& folder, bool as_json, const std::string& puzzle_name, const FileWords& files) {
  LessonOutput output;
  output.as_json = as_json;
  if (const auto refused = read_output(files, request.notes, output)) return *refused;
  const api::LessonParts parts = api::lesson_parts(request);
  const api::Answer& answer = parts.answer;
  if (!parts.document) return fail(*answer.error, as_json, source_of(request, answer.field, puzzle_name), answer.field);
  Json about = Json::object();
  for (const char* key : {"title", "steps", "key"}) about[key] = answer.json.at(key);
  std::vector<std::string> names;
  if (const auto ended = write_lesson(*parts.document, folder, output, std::move(about), names)) return *ended;
  const Json made = made_json(folder, names, answer.json);
  if (!say(as_json ? api::to_line(made) + "\n" : show(made))) return cannot_say();
  return static_cast<int>(answer.outcome);
}

void add_request_options(CLI::App& command, api::LessonRequest& request) {
  command.add_option("--idea", request.idea, "what the lesson is about: balance, or the id of a technique")->type_name("TECHNIQUE");
  command.add_option("--language", request.language, "the language of the words: en or de")->type_name("TAG");
  command.add_option("--title", request.title, "the title; otherwise made from the idea")->type_name("TEXT");
  command.add_option("--max-slack", request.max_slack, "free slack that balances may have: 0, 1 or 2")->type_name("N")->capture_default_str();
  CLI::Option* left = command.add_option("--left", request.left, "choose the balance: houses of the left pan, as in r1,r2")->type_name("HOUSES");
  CLI::Option* right = command.add_option("--right", request.right, "houses of the right pan, or none")->type_name("HOUSES");
  left->needs(right);
  right->needs(left);
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
  add_request_options(*command, words->request);
  command->add_flag("--notes", words->request.notes, "print the notes for the teacher on the page too");
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
