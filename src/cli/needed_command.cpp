// SPDX-License-Identifier: Apache-2.0
#include "api/commands.h"
#include "cli/command.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  std::string puzzle;
  std::vector<std::string> techniques;
  std::vector<std::string> without;
  int max_slack = 1;
  bool json = false;
};

std::string way_text(const std::string& what, const Json& way) {
  const Json& measure = way.at("measure");
  std::string text = what + (way.at("solved").get<bool>() ? "solved" : "stuck") + " after " + std::to_string(measure.at("steps").get<int>()) + " steps";
  if (measure.contains("hardest_technique")) {
    text += "; the hardest costs " + std::to_string(measure.at("hardest").get<int>()) + " (" + measure.at("hardest_technique").get<std::string>() + "), all together " +
            std::to_string(measure.at("effort").get<int>());
  }
  return wrapped(text + ". Techniques: " + joined_texts(way.at("techniques")) + ".", "  ");
}

std::string show(const Json& answer) {
  std::string text = wrapped(answer.at("text").get<std::string>());
  text += way_text("with:    ", answer.at("with")) + way_text("without: ", answer.at("without"));
  const Json& without = answer.at("without");
  if (!without.at("solved").get<bool>()) text += "Where it stops without:\n" + wrapped(without.at("stuck").at("candidates").get<std::string>(), "  ", 1000);
  return text;
}

}  // namespace

void add_needed(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("needed", "Is there a way through without a technique?");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_option("--technique", words->techniques, "what may be needed: a technique, a family, 'uniqueness' or 'balance'; may be repeated")
      ->type_name("NAME")
      ->allow_extra_args(false)
      ->required();
  command->add_option("--without", words->without, "not to be used either way, for example 'forcing'; may be repeated")->type_name("NAME")->allow_extra_args(false);
  command->add_option("--max-slack", words->max_slack, "free slack that balances may have: 0, 1 or 2")->type_name("N")->capture_default_str();
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/needed.md)");
  command->footer(
      "Exit code 0: answered; 1: the steps show that there is no solution; 2: the catalogue does not solve the puzzle either way; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise needed puzzle.txt --technique balance\n"
      "  counterpoise needed puzzle.txt --technique fish --technique x-wing --without forcing --json\n");
  command->callback([words, &program] {
    PuzzleTask task{[words](const std::string& puzzle) { return api::needed({puzzle, words->techniques, words->without, words->max_slack}); }, show};
    program.exit_code = answer_puzzles(words->puzzle, words->json, task);
  });
}

}  // namespace cp::cli
