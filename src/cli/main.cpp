// SPDX-License-Identifier: Apache-2.0
// The program: reads its words, lets one subcommand run, gives its exit code (docs/formats/errors.md).
#include <algorithm>
#include <cstdio>
#include <cstring>

#include "api/near_names.h"
#include "cli/collection_commands.h"
#include "cli/command.h"
#include "cli/plan_input.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

std::vector<std::string> option_names(const CLI::App& command) {
  std::vector<std::string> names;
  for (const CLI::Option* option : command.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
  }
  return names;
}

std::vector<std::string> command_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* command : app.get_subcommands({})) names.push_back(command->get_name());
  return names;
}

// The subcommand that was named, if any; the innermost one.
const CLI::App* chosen_command(const CLI::App& app) {
  const auto chosen = app.get_subcommands();
  if (chosen.empty()) return nullptr;
  const CLI::App* inner = chosen_command(*chosen.front());
  return inner != nullptr ? inner : chosen.front();
}

// "lesson draft".
std::string full_name(const CLI::App& command) {
  const CLI::App* parent = command.get_parent();
  return (parent != nullptr && parent->get_parent() != nullptr ? full_name(*parent) + " " : "") + command.get_name();
}

Error usage(std::string message, std::string hint) { return Error{ErrorCode::kBadArgument, std::move(message), std::move(hint), {}}; }

Error unexpected_words(const CLI::App& app) {
  const CLI::App* command = chosen_command(app);
  const std::vector<std::string> extras = app.remaining(true);
  const std::string word = extras.empty() ? "?" : extras.front();
  if (command == nullptr && !word.starts_with("-")) {
    return usage("'" + word + "' is not a command", api::name_hint(word, command_names(app), "the commands are"));
  }
  const std::string help = command == nullptr ? "counterpoise --help" : "counterpoise " + full_name(*command) + " --help";
  if (word.starts_with("-")) {
    const std::string bare = word.substr(0, word.find('='));
    return usage("there is no option " + bare + (command == nullptr ? "" : " for " + full_name(*command)),
                 api::name_hint(bare, option_names(command == nullptr ? app : *command), "the options are"));
  }
  return usage("'" + word + "' is one word too many", "a puzzle with blanks needs quotes around it; see " + help);
}

// CLI11's message, in our form: no capital, no full stop.
std::string as_message(std::string text) {
  while (!text.empty() && (text.back() == '.' || text.back() == '\n' || text.back() == ' ')) text.pop_back();
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

Error usage_error(const CLI::App& app, const CLI::ParseError& error) {
  const CLI::App* command = chosen_command(app);
  const std::string help = "see counterpoise " + (command == nullptr ? "" : full_name(*command) + " ") + "--help";
  if (dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr) return unexpected_words(app);
  if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) {
    if (command == nullptr) {
      const auto extras = app.remaining();
      if (!extras.empty()) return unexpected_words(app);
      return usage("no command given", api::name_hint("", command_names(app), "the commands are"));
    }
    return usage(as_message(error.what()), help + " for what is wanted and for examples");
  }
  return usage(as_message(error.what()), help);
}

bool wants_json(int count, char** words) {
  return std::any_of(words, words + count, [](const char* word) { return std::strcmp(word, "--json") == 0; });
}

int run(int count, char** words) {
  Program program;
  program.app.name("counterpoise");
  program.app.set_version_flag("--version", "counterpoise " CP_VERSION);
  program.app.require_subcommand(1);
  program.app.footer(
      "Examples:\n"
      "  counterpoise demo\n"
      "  counterpoise weigh puzzle.txt --after-basics --limit 3\n"
      "counterpoise COMMAND --help explains a command and its exit codes.\n");
  for (const auto add : {add_demo, add_lesson, add_series, add_weigh, add_path, add_survey, add_needed, add_alternatives, add_check, add_claim, add_claims, add_compose, add_judge, add_scan, add_portrait, add_count, add_bench, add_shelf, add_desk}) add(program);
  try {
    program.app.parse(count, words);
  } catch (const CLI::Success& wish) {
    program.app.exit(wish);  // --help and --version print and end well
    return std::fflush(stdout) == 0 ? 0 : cannot_say();
  } catch (const CLI::ParseError& error) {
    return fail(usage_error(program.app, error), wants_json(count, words));
  }
  return program.exit_code;
}

}  // namespace

}  // namespace cp::cli

int main(int count, char** words) {
  try {
    return cp::cli::run(count, words);
  } catch (const std::exception& surprise) {
    const cp::Error bug{cp::ErrorCode::kBug, std::string("something went wrong inside: ") + surprise.what(), "please report what you typed", {}};
    return cp::cli::fail(bug, cp::cli::wants_json(count, words));
  }
}
