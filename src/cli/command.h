// SPDX-License-Identifier: Apache-2.0
// What the subcommands share. Each adds itself to the program and, when it was chosen, leaves its exit code.
#pragma once

#include <CLI/CLI.hpp>

#include <memory>

namespace cp::cli {

// The whole program while it reads its words. The subcommands keep a reference: it must outlive the parse.
struct Program {
  CLI::App app{"Balances for Sudoku: houses weighed against houses, with arguments that can be checked and taught."};
  int exit_code = 0;
};

void add_check(Program& program);
void add_path(Program& program);
void add_weigh(Program& program);
void add_survey(Program& program);
void add_needed(Program& program);
void add_alternatives(Program& program);
void add_lesson(Program& program);
void add_series(Program& program);
void add_claim(Program& program);
void add_claims(Program& program);
void add_count(Program& program);
void add_bench(Program& program);
void add_demo(Program& program);
void add_shelf(Program& program);
void add_desk(Program& program);

}  // namespace cp::cli
