// SPDX-License-Identifier: Apache-2.0
#include "api/commands.h"
#include "cli/command.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  std::string puzzle;
  bool json = false;
};

std::string show(const Json& answer) {
  std::string text = answer.at("text").get<std::string>() + "\n";
  text += "  shape     " + answer.at("shape").get<std::string>() + "\n";
  text += "  givens    " + std::to_string(answer.at("givens").get<int>()) + "\n";
  if (answer.contains("solution")) text += "  solution  " + answer.at("solution").get<std::string>() + "\n";
  return text;
}

}  // namespace

void add_check(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("check", "Is it a proper puzzle? Is it minimal?");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/check.md)");
  command->footer(
      "Exit code 0: exactly one solution; 1: none or several; 64: no puzzle.\n"
      "Examples:\n"
      "  counterpoise check 1...3.....4...2.\n"
      "  counterpoise check puzzles.txt --json\n");
  command->callback([words, &program] {
    const PuzzleTask task{[](const std::string& puzzle) { return api::check({puzzle}); }, show};
    program.exit_code = answer_puzzles(words->puzzle, words->json, task);
  });
}

}  // namespace cp::cli
