// SPDX-License-Identifier: Apache-2.0
#include "api/commands.h"
#include "cli/command.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  std::string puzzle;
  std::vector<std::string> without;
  std::vector<std::string> only;
  int max_slack = 1;
  bool json = false;
};

std::string measure_text(const Json& measure) {
  if (!measure.contains("hardest_technique")) return "";
  const int open = measure.at("open_tenths").get<int>();
  return wrapped("Measure: hardest step " + std::to_string(measure.at("hardest").get<int>()) + " (" + measure.at("hardest_technique").get<std::string>() + "), effort " +
                 std::to_string(measure.at("effort").get<int>()) + ", " + std::to_string(measure.at("beyond_singles").get<int>()) + " steps beyond singles, " +
                 std::to_string(measure.at("narrow").get<int>()) + " of them the only way on, " + std::to_string(open / 10) + "." + std::to_string(open % 10) +
                 " steps open on average.");
}

std::string show(const Json& answer) {
  std::string text;
  int number = 0;
  for (const Json& step : answer.at("steps")) {
    text += std::to_string(++number) + ". " + step.at("technique").get<std::string>() + " (cost " + std::to_string(step.at("cost").get<int>()) + ")\n";
    text += wrapped(step.at("text").get<std::string>(), "   ");
  }
  text += measure_text(answer.at("measure"));
  if (answer.at("solved").get<bool>()) return text + "Solved in " + std::to_string(number) + (number == 1 ? " step.\n" : " steps.\n");
  const Json& stuck = answer.at("stuck");
  return text + "Stuck after " + std::to_string(number) + (number == 1 ? " step. " : " steps. ") + stuck.at("text").get<std::string>() + "\n" +
         wrapped(stuck.at("candidates").get<std::string>(), "  ", 1000);
}

}  // namespace

void add_path(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("path", "The easiest steps to the solution, each with its reason");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_option("--without", words->without, "leave out a technique, a family, 'uniqueness' or 'balance'; may be repeated")
      ->type_name("NAME")
      ->allow_extra_args(false);
  command->add_option("--only", words->only, "use only these, by the same names; may be repeated")->type_name("NAME")->allow_extra_args(false);
  command->add_option("--max-slack", words->max_slack, "free slack that balances may have: 0, 1 or 2")->type_name("N")->capture_default_str();
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/path.md)");
  command->footer(
      "Exit code 0: solved; 1: the steps show that there is no solution; 2: stuck before the end; 64: no puzzle.\n"
      "Examples:\n"
      "  counterpoise path 1...3.....4...2.\n"
      "  counterpoise path puzzle.txt --without x-wing --without balance --json\n");
  command->callback([words, &program] {
    PuzzleTask task{[words](const std::string& puzzle) { return api::path({puzzle, words->without, words->max_slack, words->only}); }, show};
    program.exit_code = answer_puzzles(words->puzzle, words->json, task);
  });
}

}  // namespace cp::cli
