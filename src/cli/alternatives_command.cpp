// SPDX-License-Identifier: Apache-2.0
#include "api/commands.h"
#include "base/text.h"
#include "cli/command.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  std::string puzzle;
  std::string eliminate;
  bool after_basics = false;
  int at_step = 0;
  int max_slack = 1;
  int limit = 20;
  bool json = false;
};

std::string show(const Json& answer) {
  const std::string target = candidates_text(Json::array({answer.at("target")}), "<>");
  const auto found = answer.at("found").get<std::size_t>();
  if (found == 0) return "Nothing in the catalogue proves " + target + " in one step here.\n";
  std::string text = std::to_string(found) + (found == 1 ? " way" : " ways") + " to prove " + target + ", the cheapest first\n";
  int rank = 0;
  for (const Json& step : answer.at("alternatives")) {
    const Json& measure = step.at("measure");
    text += std::to_string(++rank) + ". " + step.at("technique").get<std::string>() + ": cost " + std::to_string(step.at("cost").get<int>()) + "; to watch: " +
            counted(measure.at("cells").get<int>(), "cell") + ", " + counted(measure.at("houses").get<int>(), "house") + ", " +
            counted(measure.at("digits").get<int>(), "digit") + "\n";
    text += wrapped(step.at("text").get<std::string>(), "   ");
  }
  if (answer.at("alternatives").size() < found) text += "and more; --limit 0 shows all\n";
  return text;
}

}  // namespace

void add_alternatives(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("alternatives", "What else proves an elimination? Every technique and balance that does, the cheapest first");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_option("--eliminate", words->eliminate, "the candidate that is to fall, as r3c4=5")->type_name("CANDIDATE")->required();
  CLI::Option* basics = command->add_flag("--after-basics", words->after_basics, "first apply singles, locked candidates, subsets and basic fish");
  CLI::Option* step = command->add_option("--at-step", words->at_step, "at the position before this step of the path")->type_name("N");
  step->excludes(basics);
  command->add_option("--max-slack", words->max_slack, "free slack that balances may have: 0, 1 or 2")->type_name("N")->capture_default_str();
  command->add_option("--limit", words->limit, "how many to show, 0 for all")->type_name("N")->capture_default_str();
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/alternatives.md)");
  command->footer(
      "Exit code 0: there is at least one; 2: none; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise alternatives puzzle.txt --after-basics --eliminate r3c4=5\n"
      "  counterpoise alternatives puzzle.txt --at-step 18 --eliminate 'r3c4 != 5' --json\n");
  command->callback([words, &program] {
    PuzzleTask task{[words](const std::string& puzzle) {
                      return api::alternatives({puzzle, words->eliminate, words->after_basics, words->at_step, words->max_slack, words->limit});
                    },
                    show};
    task.field_text = [words](const std::string& field) { return field == "eliminate" ? words->eliminate : std::string(); };
    program.exit_code = answer_puzzles(words->puzzle, words->json, task);
  });
}

}  // namespace cp::cli
