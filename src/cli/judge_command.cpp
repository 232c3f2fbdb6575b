// SPDX-License-Identifier: Apache-2.0
// judge, improve and vary: what one does with a puzzle that is there already.
#include "api/compose_commands.h"
#include "base/text.h"
#include "cli/plan_input.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct JudgeWords {
  std::string puzzle;
  std::string file;
  api::JudgeRequest request;
  bool json = false;
};

std::string show_changes(const Json& answer) {
  const std::string tried = counted(answer.at("tried").get<int>(), "change") + " left a proper puzzle and " + (answer.at("tried").get<int>() == 1 ? "was" : "were") + " judged";
  if (answer.at("changes").empty()) return capitalised(tried) + "; none helps.\n";
  std::string text = capitalised(tried) + ". What helps:\n";
  for (const Json& change : answer.at("changes")) {
    text += "  " + change.at("puzzle").get<std::string>() + "\n";
    text += wrapped(change.at("text").get<std::string>() + (change.contains("key") ? " Key " + std::to_string(change.at("key").get<int>()) + "." : ""), "    ");
  }
  return text;
}

std::string show_judgement(const Json& answer) {
  std::string text = answer.at("meets").get<bool>() ? "It meets the plan; key " + std::to_string(answer.at("key").get<int>()) + ".\n" : "It does not meet the plan.\n";
  for (const Json& point : answer.at("points")) {
    const char* mark = point.at("met").get<bool>() ? "yes" : point.at("asked").get<bool>() ? "no " : "?  ";
    text += wrapped(std::string(mark) + "  " + point.at("point").get<std::string>() + ": " + point.at("text").get<std::string>(), "  ");
  }
  for (const Json& shortcut : answer.at("shortcuts")) {
    text += wrapped("A way round the idea: " + shortcut.at("text").get<std::string>(), "  ") + "    at " + shortcut.at("position").get<std::string>() + "\n";
  }
  if (answer.contains("changes")) text += show_changes(answer);
  return text;
}

std::string show_improvements(const Json& answer) {
  std::string text = "It meets " + std::to_string(answer.at("points_met").get<int>()) + " of " + std::to_string(answer.at("points").get<int>()) + " points";
  if (answer.contains("key")) text += "; key " + std::to_string(answer.at("key").get<int>());
  return text + ".\n" + show_changes(answer);
}

using JudgeDoor = api::Answer (*)(const api::JudgeRequest& request);

int run_judge(JudgeWords& words, JudgeDoor door, std::string (*show)(const Json& answer)) {
  const auto plan = plan_text(words.file);
  if (!plan) return fail(plan.error(), words.json);
  const auto puzzle = single_puzzle(words.puzzle);
  if (!puzzle) return fail(puzzle.error(), words.json);
  words.request.plan = *plan;
  words.request.puzzle = *puzzle;
  const api::Answer answer = door(words.request);
  if (!answer.is_ok()) {
    const Source source = answer.field == "plan" ? Source{*plan, words.file, true, 0} : answer.field == "puzzle" ? Source{*puzzle, ""} : Source{};
    return fail(*answer.error, words.json, source, answer.field);
  }
  if (!say(words.json ? api::to_line(answer.json) + "\n" : show(answer.json))) return cannot_say();
  return static_cast<int>(answer.outcome);
}

CLI::App* add_judging(Program& program, const char* name, const char* help, JudgeWords& words) {
  CLI::App* command = program.app.add_subcommand(name, help);
  command->add_option("PUZZLE", words.puzzle, kPuzzleHelp)->required();
  command->add_option("--plan", words.file, kPlanHelp)->type_name("PLAN")->required();
  command->add_option("--limit", words.request.limit, "how many changes to give")->type_name("N")->capture_default_str();
  command->add_option("--most-changes", words.request.most_changes, "givens dropped and added together: 1, or 2, which includes moving one")->type_name("N")->capture_default_str();
  command->add_flag("--json", words.json, "answer in JSON (docs/formats/judge.md)");
  return command;
}

struct VaryWords {
  std::string puzzle;
  api::VaryRequest request;
  bool json = false;
};

std::string show_variations(const Json& answer) {
  std::string text = wrapped("The balance: " + answer.at("left").get<std::string>() + " against " + answer.at("right").get<std::string>() + ": " + candidates_text(answer.at("eliminations"), "<>"));
  for (const Json& each : answer.at("variations")) {
    text += each.at("puzzle").get<std::string>() + "\n";
    text += wrapped(each.at("left").get<std::string>() + " against " + each.at("right").get<std::string>() + ": " + candidates_text(each.at("eliminations"), "<>"), "  ");
  }
  return text;
}

int run_vary(VaryWords& words) {
  const auto puzzle = single_puzzle(words.puzzle);
  if (!puzzle) return fail(puzzle.error(), words.json);
  words.request.puzzle = *puzzle;
  const api::Answer answer = api::vary(words.request);
  if (!answer.is_ok()) {
    const Source source = answer.field == "puzzle" ? Source{*puzzle, ""} : answer.field == "left" ? Source{words.request.left, "--left"} : answer.field == "right" ? Source{words.request.right, "--right"} : Source{};
    return fail(*answer.error, words.json, source, answer.field);
  }
  if (!say(words.json ? api::to_line(answer.json) + "\n" : show_variations(answer.json))) return cannot_say();
  return 0;
}

void add_vary(Program& program) {
  auto words = std::make_shared<VaryWords>();
  CLI::App* command = program.app.add_subcommand("vary", "The same puzzle in other clothes, its balance carried along");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  command->add_option("--left", words->request.left, "the balance to carry along; without it the best after the basics")->type_name("HOUSES");
  command->add_option("--right", words->request.right, "the houses of the right pan")->type_name("HOUSES");
  command->add_option("--count", words->request.count, "how many")->type_name("N")->capture_default_str();
  command->add_option("--seed", words->request.seed, "another seed, other clothes")->type_name("N")->capture_default_str();
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/judge.md)");
  command->footer(
      "Exit code 0: done; 64: bad input, or no balance to carry along.\n"
      "Example:\n"
      "  counterpoise vary puzzle.txt --count 5 --left c1,c2,c8,c9 --right r3,r7,b4,b6\n");
  command->callback([words, &program] { program.exit_code = run_vary(*words); });
}

}  // namespace

void add_judge(Program& program) {
  auto judged = std::make_shared<JudgeWords>();
  add_judging(program, "judge", "How does a puzzle meet a plan, and which given to change?", *judged)
      ->footer(
          "Exit code 0: it meets the plan; 1: it does not; 64: bad input.\n"
          "Example:\n"
          "  counterpoise judge puzzle.txt --plan data/plans/ring.plan\n");
  program.app.get_subcommand("judge")->callback([judged, &program] { program.exit_code = run_judge(*judged, api::judge, show_judgement); });
  auto improved = std::make_shared<JudgeWords>();
  add_judging(program, "improve", "Small changes to a puzzle under a plan: a given moved, dropped or added", *improved)
      ->footer(
          "Exit code 0: changes that help; 2: none was found; 64: bad input.\n"
          "Example:\n"
          "  counterpoise improve puzzle.txt --plan data/plans/ring.plan --limit 3\n");
  program.app.get_subcommand("improve")->callback([improved, &program] { program.exit_code = run_judge(*improved, api::improve, show_improvements); });
  add_vary(program);
}

}  // namespace cp::cli
