// SPDX-License-Identifier: Apache-2.0
#include "api/commands.h"
#include "cli/command.h"
#include "cli/puzzle_file.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  std::string puzzle;
  std::string claim;
  std::string file;
  std::string footing;
  bool after_basics = false;
  bool reveal = false;
  bool is_spoken = false;
  bool wants_certificate = false;
  bool json = false;
};

std::string written_lines(const Json& reason) {
  std::string text;
  for (const Json& line : reason.at("written")) {
    const auto written = line.get<std::string>();
    const std::size_t indent = written.find_first_not_of(' ');
    text += wrapped(written.substr(indent), "    " + std::string(indent, ' '));
  }
  return text;
}

std::string show_claim(const Json& answer, const Words& words) {
  std::string text = wrapped(answer.at("text").get<std::string>(), "  ");
  if (!answer.contains("reason")) return text;
  const Json& reason = answer.at("reason");
  if (!words.is_spoken) text += "  The reason (" + reason.at("minimal").get<std::string>() + "):\n" + written_lines(reason);
  if (words.wants_certificate) text += reason.at("certificate").get<std::string>();
  return text;
}

std::string show_board(const Json& answer) {
  std::string text;
  if (answer.contains("wrong_marks_text")) text += wrapped(answer.at("wrong_marks_text").get<std::string>());
  if (answer.contains("solution")) text += "The solution: " + answer.at("solution").get<std::string>() + "\n";
  return text;
}

std::string show_script(const Json& answer, const Words& words) {
  std::string text = show_board(answer);
  for (const Json& claim : answer.at("claims")) {
    text += std::to_string(claim.at("number").get<int>()) + ". " + claim.at("claim").get<std::string>() + "\n" + show_claim(claim, words);
  }
  return text + answer.at("text").get<std::string>() + "\n";
}

Result<std::vector<Line>> script_lines(const std::string& file) {
  if (file != "-") return read_lines(file);
  std::vector<Line> lines;
  while (auto line = read_line(stdin, static_cast<int>(lines.size()) + 1)) lines.push_back(std::move(*line));
  return lines;
}

int answer_script(const Words& words) {
  const auto lines = script_lines(words.file);
  if (!lines) return fail(lines.error(), words.json);
  api::ClaimsRequest request{"", "", words.footing, words.after_basics, words.reveal};
  for (const Line& line : *lines) request.script += line.text + "\n";
  if (!words.puzzle.empty()) {
    const auto puzzle = single_puzzle(words.puzzle);
    if (!puzzle) return fail(puzzle.error(), words.json);
    request.puzzle = *puzzle;
  }
  const api::Answer answer = api::claims(request);
  if (!answer.is_ok()) {
    const bool is_script = answer.field == "script";
    const Source source = is_script ? Source{request.script, words.file, true, 0} : answer.field == "footing" ? Source{words.footing, "--footing", false, 0} : Source{};
    return fail(*answer.error, words.json, source, answer.field);
  }
  if (!say(words.json ? api::to_line(answer.json) + "\n" : show_script(answer.json, words))) return cannot_say();
  return static_cast<int>(answer.outcome);
}

void add_common(CLI::App& command, const std::shared_ptr<Words>& words) {
  command.add_option("--footing", words->footing, "what claims may rest on: rules, position, digits, houses, names; without it position and all rules")->type_name("FACTS");
  command.add_flag("--after-basics", words->after_basics, "first apply singles, locked candidates, subsets and basic fish");
  command.add_flag("--spoken", words->is_spoken, "the short form of the reasons only");
  command.add_flag("--certificate", words->wants_certificate, "add the certificate (docs/formats/certificate.md)");
  command.add_flag("--reveal", words->reveal, "give the solution away");
}

}  // namespace

void add_claim(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("claim", "Is it so? Proved, refuted or open, with the reason");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_option("CLAIM", words->claim, "what is claimed, as in 'r3c4 = 5' or 'r1c1 r1c2 hold 1,2'")->required();
  add_common(*command, words);
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/claim.md)");
  command->footer(
      "Exit code 0: proved; 1: false; 2: open; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise claim puzzle.txt 'r3c4 != 5'\n"
      "  counterpoise claim puzzle.txt 'balance x = c1,c2 : r3,r7; {x.left} = {x.right}' --footing x\n");
  command->callback([words, &program] {
    PuzzleTask task;
    task.ask = [words](const std::string& puzzle) { return api::claim({puzzle, words->claim, words->footing, words->after_basics, words->reveal}); };
    task.show = [words](const Json& answer) { return show_board(answer) + show_claim(answer, *words); };
    task.field_text = [words](const std::string& field) { return field == "claim" ? words->claim : field == "footing" ? words->footing : std::string(); };
    program.exit_code = answer_puzzles(words->puzzle, words->json, task);
  });
}

void add_claims(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("claims", "Answer a script of claims; which is the first that does not follow?");
  command->add_option("FILE", words->file, "the script: names, footings and claims, one a line, or JSON; - for standard input")->required();
  command->add_option("--puzzle", words->puzzle, "the puzzle, when the script does not name it")->type_name("PUZZLE");
  add_common(*command, words);
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/claim.md)");
  command->footer(
      "Exit code 0: all proved; 1: some are false; 2: some are open; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise claims script.txt --spoken\n"
      "  counterpoise claims script.txt --puzzle puzzle.txt --json\n");
  command->callback([words, &program] { program.exit_code = answer_script(*words); });
}

}  // namespace cp::cli
