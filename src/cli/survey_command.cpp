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
  bool after_basics = false;
  int max_slack = 1;
  int limit = 5;
  bool json = false;
};

std::string count_text(const Json& places) {
  const auto count = places.at("count").get<std::size_t>();
  return places.at("is_cut").get<bool>() ? "more than " + std::to_string(count) : std::to_string(count);
}

std::string show_places(const Json& places) {
  std::string text = places.at("name").get<std::string>() + " (" + places.at("family").get<std::string>() + "): " + count_text(places) + ", cost from " +
                     std::to_string(places.at("cost").get<int>());
  if (places.at("needs_unique").get<bool>()) text += ", only in a puzzle with one solution";
  text += "\n";
  for (const Json& step : places.at("steps")) text += wrapped(step.at("text").get<std::string>(), "    ").replace(0, 4, "  - ");
  const std::size_t shown = places.at("steps").size();
  if (shown < places.at("count").get<std::size_t>()) text += "    and more; --limit 0 shows all\n";
  return text;
}

std::string show_close(const Json& close) {
  std::string text = close.at("name").get<std::string>() + ": fires nowhere";
  if (!close.at("can_tell").get<bool>()) return text + ". How close it comes is told for puzzles with one solution.\n";
  if (close.at("near").empty()) return text + ", and no single candidate is in its way.\n";
  text += ", but it is one candidate away:\n";
  for (const Json& near : close.at("near")) {
    text += "  - without " + candidates_text(Json::array({near.at("missing")}), "=") + ":\n" + wrapped(near.at("text").get<std::string>(), "    ");
  }
  return text;
}

std::string show(const Json& answer) {
  std::string text;
  for (const Json& places : answer.at("techniques")) text += show_places(places);
  if (answer.contains("close")) {
    for (const Json& close : answer.at("close")) text += show_close(close);
  }
  for (const Json& balance : answer.at("balances")) {
    text += "balance, load " + std::to_string(balance.at("load").at("total").get<int>()) + "\n" + wrapped(balance.at("text").get<std::string>(), "    ");
  }
  if (text.empty()) text = "Nothing fires: no technique and no balance says anything here.\n";
  return text;
}

}  // namespace

void add_survey(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("survey", "Everything that fires now, or where one technique sits and how close it comes");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_option("--technique", words->techniques, "only this technique, family, 'uniqueness' or 'balance'; may be repeated")
      ->type_name("NAME")
      ->allow_extra_args(false);
  command->add_flag("--after-basics", words->after_basics, "first apply singles, locked candidates, subsets and basic fish");
  command->add_option("--max-slack", words->max_slack, "free slack that balances may have: 0, 1 or 2")->type_name("N")->capture_default_str();
  command->add_option("--limit", words->limit, "how many steps of each technique to show, and how many balances; 0 for all")->type_name("N")->capture_default_str();
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/survey.md)");
  command->footer(
      "Exit code 0: done; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise survey puzzle.txt --after-basics\n"
      "  counterpoise survey puzzle.txt --after-basics --technique swordfish\n");
  command->callback([words, &program] {
    PuzzleTask task{[words](const std::string& puzzle) {
                      return api::survey({puzzle, words->techniques, words->after_basics, words->max_slack, words->limit});
                    },
                    show};
    program.exit_code = answer_puzzles(words->puzzle, words->json, task);
  });
}

}  // namespace cp::cli
