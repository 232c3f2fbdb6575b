// SPDX-License-Identifier: Apache-2.0
// shelf survey: what the puzzles hold, so that they can be found by it. shelf random: raw material.
#include "base/text.h"
#include "cli/progress.h"
#include "cli/shelf_command.h"
#include "cli/stop_wish.h"
#include "shelf/random_lines.h"
#include "shelf/survey_shelf.h"

namespace cp::cli {

namespace {

struct SurveyWords {
  std::string shelf;
  std::string query;
  std::string depth = "balances";
  std::int64_t limit = 0;
  int threads = 0;
  bool needed = false;
};

int run(const SurveyWords& words) {
  ShelfSurveyWish wish;
  wish.depth = *survey_depth_named(words.depth);
  if (words.needed && wish.depth != SurveyDepth::kFull) return fail(Error{ErrorCode::kBadArgument, "--needed asks the whole catalogue", "add --depth full", {}}, false);
  wish.ask_needed = words.needed;
  wish.most = words.limit;
  wish.threads = threads_wished(words.threads);
  if (!words.query.empty()) {
    auto query = read_query(words.query);
    if (!query) return fail(query.error(), false, {words.query, "--find"});
    wish.query = std::move(query).value();
  }
  auto shelf = Shelf::open(words.shelf, Database::Mode::kWrite);
  if (!shelf) return fail(shelf.error(), false);
  const StopWish stop;
  Progress progress;
  const auto done = survey_shelf(shelf.value(), wish, [&](std::int64_t count) {
    progress.show(counted(static_cast<int>(count), "puzzle") + " surveyed");
    return StopWish::signal() == 0;
  });
  if (!done) return fail(done.error(), false);
  if (auto trouble = shelf.value().tidy()) return fail(*trouble, false);
  if (!say(counted(static_cast<int>(*done), "puzzle") + " surveyed\n")) return cannot_say();
  if (StopWish::signal() == 0) return 0;
  complain(Error{ErrorCode::kLimit, "stopped on the way", "what was surveyed is kept; the same command goes on", {}});
  return static_cast<int>(api::Outcome::kOpen);
}

struct RandomWords {
  std::uint64_t count = 0;
  std::uint64_t seed = 1;
  int threads = 0;
};

int run_random(const RandomWords& words) {
  bool is_read = true;
  SaidTogether lines;
  random_lines(words.seed, words.count, threads_wished(words.threads), [&](const std::string& line) {
    is_read = lines.add(line + "\n");
    return is_read;
  });
  return is_read && lines.end() ? 0 : cannot_say();
}

void add_random(CLI::App& shelf, Program& program) {
  auto words = std::make_shared<RandomWords>();
  CLI::App* command = shelf.add_subcommand("random", "Write random minimal puzzles, one a line, to import or to try things out on");
  command->add_option("COUNT", words->count, "how many")->required()->check(CLI::Range(std::uint64_t{0}, std::uint64_t{1'000'000'000}));
  command->add_option("--seed", words->seed, "the same seed gives the same puzzles on every machine")->type_name("N")->capture_default_str();
  command->add_option("--threads", words->threads, "how many cores to use; 0: all")->type_name("N")->check(CLI::Range(0, 256))->capture_default_str();
  command->footer("Example:\n  counterpoise shelf random 1000 --seed 7 | counterpoise shelf import my.shelf -\n");
  command->callback([words, &program] { program.exit_code = run_random(*words); });
}

}  // namespace

void add_shelf_survey(CLI::App& shelf, Program& program) {
  auto words = std::make_shared<SurveyWords>();
  CLI::App* command = shelf.add_subcommand("survey", "Survey the proper puzzles of the shelf; what was done is not done again");
  add_shelf_file(*command, words->shelf);
  command->add_option("--find", words->query, "only puzzles that fit this query")->type_name("QUERY");
  command->add_option("--depth", words->depth, "how far to look: basics, balances or full (docs/formats/scan.md)")
      ->type_name("DEPTH")
      ->check(CLI::IsMember({"basics", "balances", "full"}))
      ->capture_default_str();
  command->add_flag("--needed", words->needed, "at depth full: also which families are needed; several times as long");
  command->add_option("--limit", words->limit, "stop after so many; 0 for all")->type_name("N")->check(CLI::Range(0, 1'000'000'000))->capture_default_str();
  command->add_option("--threads", words->threads, "how many cores to use; 0: all")->type_name("N")->check(CLI::Range(0, 256))->capture_default_str();
  command->footer(
      "Exit code 0: done; 2: stopped on the way; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise shelf survey my.shelf\n"
      "  counterpoise shelf survey my.shelf --depth full --needed --find \"tag candidate\"\n");
  command->callback([words, &program] { program.exit_code = run(*words); });
  add_random(shelf, program);
}

}  // namespace cp::cli
