// SPDX-License-Identifier: Apache-2.0
#include <chrono>
#include <cstdio>

#include "api/commands.h"
#include "cli/command.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  bool quick = false;
  bool json = false;
};

std::string show(const Json& answer) {
  std::int64_t solved = 0;
  for (const Json& position : answer.at("positions")) solved += position.at("solved").get<bool>() ? 1 : 0;
  std::string text = "positions " + std::to_string(answer.at("positions").size()) + ", solved " + std::to_string(solved) + "\n";
  for (const Json& line : answer.at("techniques")) {
    std::string name = line.at("technique").get<std::string>();
    name.resize(std::max<std::size_t>(name.size(), 16), ' ');
    text += name + " fired " + std::to_string(line.at("fired").get<std::int64_t>()) + ", conclusions " + std::to_string(line.at("conclusions").get<std::int64_t>()) + "\n";
  }
  return text + "signature " + answer.at("signature").get<std::string>() + "\n";
}

int run(const Words& words) {
  const auto start = std::chrono::steady_clock::now();
  const api::Answer answer = api::bench({words.quick});
  const auto spent = std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now() - start).count();
  if (!answer.is_ok()) return fail(*answer.error, words.json);
  // Never judged, so it stays apart from the answer.
  std::fprintf(stderr, "time %lld ms\n", static_cast<long long>(spent));
  return say(words.json ? api::to_line(answer.json) + "\n" : show(answer.json)) ? static_cast<int>(answer.outcome) : cannot_say();
}

}  // namespace

void add_bench(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("bench", "One number that changes when the behaviour of the engine changes");
  command->add_flag("--quick", words->quick, "every tenth position; has a signature of its own");
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/bench.md)");
  command->footer(
      "The last line is the signature. The time goes to standard error and plays no part.\n"
      "Examples:\n"
      "  counterpoise bench\n"
      "  counterpoise bench --quick --json\n");
  command->callback([words, &program] { program.exit_code = run(*words); });
}

}  // namespace cp::cli
