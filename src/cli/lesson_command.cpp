// SPDX-License-Identifier: Apache-2.0
#include "cli/lesson_command.h"

#include "cli/command.h"
#include "cli/lesson_folder.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  std::string puzzle;
  std::string folder;
  std::string title;
  std::string left;
  std::string right;
  int max_slack = 1;
  bool notes = false;
  bool json = false;
};

std::string show(const Json& made) {
  const Json& key = made.at("key");
  std::string text = "The lesson is in " + made.at("page").get<std::string>() + "\n";
  text += wrapped("Open it in a browser and go from scene to scene with the arrow keys. Look at the scenes on the balance " + joined_texts(key.at("left")) + " against " +
                  joined_texts(key.at("right")) + ", step " + std::to_string(key.at("step").get<int>()) + " of " + std::to_string(made.at("steps").get<int>()) +
                  ": it strikes out " + candidates_text(key.at("eliminations"), "<>") + ".");
  return text + std::to_string(made.at("figures").size()) + " figures (SVG) are in the folder figures beside it.\n";
}

int run(const Words& words) {
  const auto puzzle = single_puzzle(words.puzzle);
  if (!puzzle) return fail(puzzle.error(), words.json, {words.puzzle, ""}, "puzzle");
  return make_lesson({*puzzle, words.title, words.notes, words.max_slack, words.left, words.right}, words.folder, words.json, "");
}

}  // namespace

namespace {

// What a message about a field of the request is about.
Source source_of(const api::LessonRequest& request, const std::string& field, const std::string& puzzle_name) {
  if (field == "puzzle") return {request.puzzle, puzzle_name};
  if (field == "left") return {request.left, "--left"};
  if (field == "right") return {request.right, "--right"};
  return {};
}

}  // namespace

int make_lesson(const api::LessonRequest& request, const std::string& folder, bool as_json, const std::string& puzzle_name) {
  const api::Answer answer = api::lesson(request);
  if (!answer.is_ok()) return fail(*answer.error, as_json, source_of(request, answer.field, puzzle_name), answer.field);
  const auto made = write_lesson(folder, answer.json);
  if (!made) return fail(made.error(), as_json);
  if (!say(as_json ? api::to_line(*made) + "\n" : show(*made))) return cannot_say();
  return static_cast<int>(answer.outcome);
}

void add_lesson(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("lesson", "Write an illustrated lesson on the key balance of a puzzle");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_option("-o,--output", words->folder, "the folder for the lesson; new, empty, or an earlier lesson to replace")->type_name("DIR")->required();
  command->add_option("--title", words->title, "the title of the page; otherwise made from the balance")->type_name("TEXT");
  command->add_option("--max-slack", words->max_slack, "free slack that balances may have: 0, 1 or 2")->type_name("N")->capture_default_str();
  CLI::Option* left = command->add_option("--left", words->left, "choose the balance: houses of the left pan, as in r1,r2")->type_name("HOUSES");
  CLI::Option* right = command->add_option("--right", words->right, "houses of the right pan")->type_name("HOUSES");
  left->needs(right);
  right->needs(left);
  command->add_flag("--notes", words->notes, "print the notes for the teacher on the page too");
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/lesson.md)");
  command->footer(
      "Exit code 0: the lesson is written; 2: no balance says anything; 64: no proper puzzle, or the folder cannot be used.\n"
      "Examples:\n"
      "  counterpoise lesson puzzle.txt -o my-lesson\n"
      "  counterpoise lesson puzzle.txt -o my-lesson --left c1,c2 --right r3,b7\n"
      "  counterpoise lesson puzzle.txt -o my-lesson --title \"Two rows against two columns\" --notes\n");
  command->callback([words, &program] { program.exit_code = run(*words); });
}

}  // namespace cp::cli
