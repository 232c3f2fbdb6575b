// SPDX-License-Identifier: Apache-2.0
#include "api/commands.h"
#include "cli/command.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

struct Words {
  std::string shape;
  bool json = false;
};

int run(const Words& words) {
  const api::Answer answer = api::count({words.shape});
  if (!answer.is_ok()) return fail(*answer.error, words.json, {words.shape, "--shape"}, answer.field);
  const std::string text = words.json ? api::to_line(answer.json) : std::to_string(answer.json.at("grids").get<std::uint64_t>());
  return say(text + "\n") ? static_cast<int>(answer.outcome) : cannot_say();
}

}  // namespace

void add_count(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("count", "How many full grids a shape has");
  command->add_option("--shape", words->shape, "4x4 or 6x6")->type_name("SHAPE")->required();
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/count.md)");
  command->footer(
      "Exit code 0: done; 2: too many grids to count one by one; 64: no such shape.\n"
      "Examples:\n"
      "  counterpoise count --shape 4x4\n"
      "  counterpoise count --shape 6x6 --json\n");
  command->callback([words, &program] { program.exit_code = run(*words); });
}

}  // namespace cp::cli
