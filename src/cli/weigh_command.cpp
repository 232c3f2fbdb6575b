// SPDX-License-Identifier: Apache-2.0
#include <chrono>

#include "api/commands.h"
#include "cli/command.h"
#include "cli/puzzle_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  std::string puzzle;
  std::string left;
  std::string right;
  bool after_basics = false;
  int level = 5;
  int max_slack = 1;
  int limit = 20;
  int most_houses = 99;
  bool why = false;
  bool json = false;
};

std::string tally_text(const Json& tally) {
  static constexpr const char* kDigits = "123456789ABCDEFG";
  std::string digits;
  std::string counts;
  for (std::size_t i = 0; i < tally.size(); ++i) {
    const int count = tally[i].get<int>();
    const std::string entry = (count > 0 ? "+" : "") + std::to_string(count);
    digits += std::string(4, ' ') + kDigits[i];
    counts += std::string(5 - std::min<std::size_t>(entry.size(), 4), ' ') + entry;
  }
  return "  digit     " + digits + "\n  tally     " + counts + "\n";
}

// What --why found.
std::string changes_text(const Json& balance) {
  if (!balance.contains("missing") || !balance.at("missing").contains("changes")) return "";
  const Json& changes = balance.at("missing").at("changes");
  if (changes.empty() && balance.at("missing").at("kind") != "slack") return "";
  if (changes.empty()) return "  No single candidate whose fall would make it speak.\n";
  std::string text;
  for (const Json& change : changes) text += wrapped(change.at("text").get<std::string>(), "  ");
  return text;
}

std::string show_balance(const Json& balance) {
  std::string text = "  left       " + joined_texts(balance.at("left")) + "\n  right      " + joined_texts(balance.at("right")) + "\n";
  text += tally_text(balance.at("tally"));
  text += "  surplus    " + std::to_string(balance.at("surplus").get<int>()) + ", slack " + std::to_string(balance.at("slack").get<int>()) + ", free slack " +
          std::to_string(balance.at("free_slack").get<int>()) + ", load " + std::to_string(balance.at("load").at("total").get<int>()) + "\n";
  text += "  open left\n" + wrapped(joined_texts(balance.at("open_left"), " "), "             ");
  text += "  open right\n" + wrapped(joined_texts(balance.at("open_right"), " "), "             ");
  const int level = balance.at("level").get<int>();
  text += wrapped(balance.at("text").get<std::string>(), "  ");
  if (level > 0) {
    text += "  level " + std::to_string(level) + " strikes out\n" + wrapped(candidates_text(balance.at("eliminations"), "<>"), "             ");
  }
  if (balance.contains("stronger")) {
    for (const Json& more : balance.at("stronger")) {
      text += "  level " + std::to_string(more.at("level").get<int>()) + " strikes out\n" + wrapped(candidates_text(more.at("eliminations"), "<>"), "             ");
    }
  }
  return text + changes_text(balance);
}

std::string with_position(const Json& answer) {
  if (!answer.contains("position")) return "";
  return "The position after the basics:\n" + wrapped(answer.at("position").get<std::string>(), "  ", 1000);
}

std::string show_one(const Json& answer) { return with_position(answer) + show_balance(answer); }

std::string show_all(const Json& answer) {
  std::string text = with_position(answer);
  int rank = 0;
  for (const Json& balance : answer.at("balances")) text += "Balance " + std::to_string(++rank) + "\n" + show_balance(balance);
  if (answer.at("impossible").get<bool>()) text += "A balance shows that this position has no solution.\n";
  else if (rank == 0) text += "No balance within this free slack says anything.\n";
  text += "Scanned " + std::to_string(answer.at("scanned").get<std::uint64_t>()) + " pairs of sides, " + std::to_string(answer.at("distinct").get<std::uint64_t>()) +
          " different balances, examined " + std::to_string(answer.at("examined").get<std::uint64_t>()) + ", in " +
          std::to_string(answer.at("milliseconds").get<std::int64_t>()) + " ms.\n";
  return text;
}

api::Answer find_timed(const api::FindRequest& request) {
  const auto start = std::chrono::steady_clock::now();
  api::Answer answer = api::find(request);
  const auto spent = std::chrono::steady_clock::now() - start;
  if (answer.is_ok()) answer.json["milliseconds"] = std::chrono::duration_cast<std::chrono::milliseconds>(spent).count();
  return answer;
}

PuzzleTask task_for(const std::shared_ptr<Words>& words, bool names_houses) {
  PuzzleTask task;
  if (names_houses) {
    task.ask = [words](const std::string& puzzle) { return api::weigh({puzzle, words->left, words->right, words->after_basics, words->level, words->why}); };
    task.show = show_one;
  } else {
    task.ask = [words](const std::string& puzzle) { return find_timed({puzzle, words->after_basics, words->max_slack, words->limit, words->most_houses}); };
    task.show = show_all;
  }
  task.field_text = [words](const std::string& field) { return field == "left" ? words->left : field == "right" ? words->right : std::string(); };
  return task;
}

}  // namespace

void add_weigh(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("weigh", "Find balances, or work out what one says");
  command->add_option("PUZZLE", words->puzzle, kPuzzleHelp)->required();
  CLI::Option* left = command->add_option("--left", words->left, "houses of the left pan, as in r1,r2 or 2*c4")->type_name("HOUSES");
  CLI::Option* right = command->add_option("--right", words->right, "houses of the right pan")->type_name("HOUSES");
  command->add_flag("--after-basics", words->after_basics, "first apply singles, locked candidates, subsets and basic fish");
  CLI::Option* level = command->add_option("--level", words->level, "with houses named: the highest level of argument to try, 1 to 5")->type_name("N")->capture_default_str();
  CLI::Option* slack = command->add_option("--max-slack", words->max_slack, "when searching: the free slack to allow, 0, 1 or 2")->type_name("N")->capture_default_str();
  CLI::Option* limit = command->add_option("--limit", words->limit, "when searching: how many balances to give, 0 for all")->type_name("N")->capture_default_str();
  CLI::Option* most = command->add_option("--most-houses", words->most_houses, "when searching: only balances of so few houses, which is quick")->type_name("N");
  level->needs(left);
  command->add_flag("--why", words->why, "with houses named: when nothing falls, look for what would make it speak")->needs(left);
  for (CLI::Option* searching : {slack, limit, most}) searching->excludes(left)->excludes(right);
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/weigh.md)");
  command->footer(
      "With houses: what this balance says. Without: all balances of houses that do not overlap, best first.\n"
      "Exit code 0: done; 1: a balance shows that there is no solution; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise weigh puzzle.txt --left r1,r2 --right c1,c2 --after-basics\n"
      "  counterpoise weigh puzzle.txt --left r1,r2 --right c1 --why\n"
      "  counterpoise weigh puzzle.txt --after-basics --max-slack 0 --limit 5 --json\n");
  command->callback([words, left, right, &program] { program.exit_code = answer_puzzles(words->puzzle, words->json, task_for(words, left->count() + right->count() > 0)); });
}

}  // namespace cp::cli
