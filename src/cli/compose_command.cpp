// SPDX-License-Identifier: Apache-2.0
// plan and compose: puzzles set to a plan.
#include <algorithm>
#include <chrono>
#include <thread>

#include "api/compose_commands.h"
#include "base/text.h"
#include "cli/command.h"
#include "cli/lesson_command.h"
#include "cli/plan_input.h"
#include "cli/progress.h"
#include "cli/puzzle_file.h"
#include "cli/report.h"
#include "cli/stop_wish.h"
#include "cli/whole_file.h"

namespace cp::cli {

namespace {

using Clock = std::chrono::steady_clock;

struct ComposeWords {
  std::string file;
  std::string state_file;
  api::ComposeRequest request;
  bool json = false;
};

constexpr auto kBetweenStates = std::chrono::seconds(10);

// Says how the search is going, writes the state down now and then, and hears Ctrl-C.
class Listener final : public api::ComposeObserver {
 public:
  Listener(std::string state_file, std::size_t wanted) : state_file_(std::move(state_file)), wanted_(wanted) {}

  bool goes_on(const api::ComposeNews& news, const std::function<std::string()>& state) override {
    const auto now = Clock::now();
    if (!start_) {
      start_ = last_state_ = now;
      first_ = news;
    }
    progress_.show(line(news, std::chrono::duration<double>(now - *start_).count()));
    if (!state_file_.empty() && now - last_state_ > kBetweenStates) {
      last_state_ = now;
      fault = write_whole(state_file_, "choose another file for --state", state() + "\n");
    }
    return !fault && StopWish::signal() == 0;
  }

  std::optional<Error> fault;

 private:
  // "7 of 10 found; 5120 tries (1700 a second): laid out 100 %, proper 99 %, ...; about 3 s left"
  [[nodiscard]] std::string line(const api::ComposeNews& news, double seconds) const {
    static constexpr std::array<const char*, 7> kNames = {"", "laid out", "proper", "stuck", "nothing excluded", "moved", "met"};
    std::string text = std::to_string(news.found) + " of " + std::to_string(wanted_) + " found; " + std::to_string(news.tries) + " tries";
    const std::uint64_t tries = news.tries - first_.tries;
    if (seconds > 0 && tries > 0) text += " (" + std::to_string(static_cast<std::uint64_t>(static_cast<double>(tries) / seconds)) + " a second)";
    for (std::size_t stage = 1; stage < kNames.size(); ++stage) text += std::string(stage == 1 ? ": " : ", ") + kNames[stage] + " " + std::to_string(news.reached[stage]);
    const std::size_t found = news.found - first_.found;
    if (found == 0) return text + "; none found yet, so there is no telling how long";
    const double left = seconds / static_cast<double>(found) * static_cast<double>(wanted_ - std::min(wanted_, news.found));
    return text + "; about " + std::to_string(static_cast<std::uint64_t>(left) + 1) + " s left";
  }

  std::string state_file_;
  std::size_t wanted_;
  std::optional<Clock::time_point> start_;
  Clock::time_point last_state_;
  api::ComposeNews first_;
  Progress progress_;
};

std::string idea_line(const Json& puzzle) {
  if (!puzzle.contains("left")) return puzzle.at("idea").get<std::string>();
  return puzzle.at("left").get<std::string>() + " against " + puzzle.at("right").get<std::string>() + ", slack " + std::to_string(puzzle.at("slack").get<int>()) + ", level " +
         std::to_string(puzzle.at("level").get<int>());
}

std::string clean_line(const Json& clean) {
  const auto number = [&](const char* key) { return std::to_string(clean.at(key).get<int>()); };
  std::string text = "key " + number("key") + ": load " + number("load") + ", other balances " + number("other_balances") + ", other techniques " + number("other_techniques") +
                     ", steps beyond singles afterwards " + number("tail_steps") + ", hint " + number("hint") + ", superfluous givens " + number("superfluous");
  if (!clean.at("irreducible").get<bool>()) text += ", falls apart into two balances";
  return text;
}

std::string show(const Json& answer) {
  std::string text;
  for (const Json& puzzle : answer.at("puzzles")) {
    text += puzzle.at("puzzle").get<std::string>() + "\n";
    text += wrapped(std::to_string(puzzle.at("givens").get<int>()) + " givens. " + idea_line(puzzle) + ": " + candidates_text(puzzle.at("eliminations"), "<>"), "  ");
    text += wrapped(clean_line(puzzle.at("clean")), "  ");
  }
  const Json& yield = answer.at("yield");
  const auto count = [&](const char* key) { return std::to_string(yield.at(key).get<std::uint64_t>()); };
  text += std::to_string(answer.at("found").get<std::size_t>()) + " found in " + count("tried") + " tries: laid out " + count("laid_out") + ", proper " + count("proper") + ", stuck " +
          count("stuck") + ", nothing excluded moves " + count("no_other") + ", moved " + count("moved") + ", met " + count("met") + "; in other clothes " + count("repeated") + ".\n";
  return text;
}

// The state of an earlier search, if there is one.
Result<std::string> earlier_state(const std::string& file) {
  if (file.empty() || !exists(file)) return std::string();
  return text_of_file(file);
}

int run_compose(ComposeWords& words) {
  const auto plan = plan_text(words.file);
  if (!plan) return fail(plan.error(), words.json);
  auto state = earlier_state(words.state_file);
  if (!state) return fail(state.error(), words.json);
  words.request.plan = *plan;
  words.request.state = *state;
  if (words.request.threads == 0) words.request.threads = std::clamp(static_cast<int>(std::thread::hardware_concurrency()), 1, 64);
  const StopWish stop;
  api::Answer answer;
  {
    Listener listener(words.state_file, static_cast<std::size_t>(std::max(words.request.count, words.request.of)));
    answer = api::compose(words.request, &listener);
    if (listener.fault) return fail(*listener.fault, words.json);
  }
  if (!answer.is_ok()) {
    const Source source = answer.field == "plan" ? Source{*plan, words.file, true, 0} : answer.field == "state" ? Source{"", words.state_file} : Source{};
    return fail(*answer.error, words.json, source, answer.field);
  }
  if (!words.state_file.empty()) {
    if (auto failed = write_whole(words.state_file, "choose another file for --state", answer.json.at("state").get<std::string>() + "\n")) return fail(*failed, words.json);
  }
  answer.json.erase("state");
  if (!say(words.json ? api::to_line(answer.json) + "\n" : show(answer.json))) return cannot_say();
  return static_cast<int>(answer.outcome);
}

std::string show_plan(const Json& answer) {
  std::string text = answer.at("plan").get<std::string>();
  text += "% " + counted(static_cast<int>(answer.at("must").size()), "cell") + " must and " + std::to_string(answer.at("may").size()) + " may hold a given.\n";
  if (answer.contains("left")) {
    text += "% " + counted(static_cast<int>(answer.at("left").size()), "cell") + " in the left remainder, " + std::to_string(answer.at("right").size()) + " in the right one, " +
            std::to_string(answer.at("cancelled").size()) + " cancelled.\n";
  }
  return text;
}

void add_plan(Program& program) {
  auto file = std::make_shared<std::string>();
  auto json = std::make_shared<bool>(false);
  CLI::App* command = program.app.add_subcommand("plan", "Read the plan of a composition and see whether it goes together");
  command->add_option("PLAN", *file, kPlanHelp)->required();
  command->add_flag("--json", *json, "answer in JSON (docs/formats/compose.md)");
  command->footer(
      "Exit code 0: the plan can be worked with; 64: bad input.\n"
      "Example:\n"
      "  counterpoise plan data/plans/ring.plan\n");
  command->callback([file, json, &program] {
    const auto plan = plan_text(*file);
    if (!plan) {
      program.exit_code = fail(plan.error(), *json);
      return;
    }
    const api::Answer answer = api::plan_check({*plan});
    if (!answer.is_ok()) program.exit_code = fail(*answer.error, *json, {*plan, *file, true, 0}, answer.field);
    else if (!say(*json ? api::to_line(answer.json) + "\n" : show_plan(answer.json))) program.exit_code = cannot_say();
  });
}

}  // namespace

Result<std::string> plan_text(const std::string& file) { return text_of_file(file); }

void add_compose(Program& program) {
  add_plan(program);
  auto words = std::make_shared<ComposeWords>();
  words->request.threads = 0;
  CLI::App* command = program.app.add_subcommand("compose", "Set puzzles to a plan: the idea is the way in, the layout shows it");
  command->add_option("PLAN", words->file, kPlanHelp)->required();
  command->add_option("--count", words->request.count, "how many puzzles to give")->type_name("N")->capture_default_str();
  command->add_option("--of", words->request.of, "how many to find before the cleanest are chosen; without it as many as are given")->type_name("N");
  command->add_option("--seed", words->request.seed, "another seed, other puzzles; the same seed, the same puzzles; without it 1, or the seed of the search in --state")->type_name("N");
  command->add_option("--most-tries", words->request.most_tries, "stop after so many tries; without it the search goes on until Ctrl-C, which keeps what was found")->type_name("N");
  command->add_option("--threads", words->request.threads, "how many to work with; without it one a core. The puzzles are the same for any number")->type_name("N");
  command->add_option("--state", words->state_file, "a file to keep the search in; when it is there, the search goes on from it")->type_name("FILE");
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/compose.md)");
  command->footer(
      "Exit code 0: as many as wanted; 2: fewer (the tries were used up, or Ctrl-C); 64: bad input.\n"
      "Examples:\n"
      "  counterpoise compose data/plans/ring.plan\n"
      "  counterpoise compose my.plan --count 5 --of 100 --state my.state\n");
  command->callback([words, &program] { program.exit_code = run_compose(*words); });
}

}  // namespace cp::cli
