// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cli/command.h"

namespace cp::cli {

// series plan: which puzzles of a collection teach a list of ideas, in which order?
void add_series_plan(CLI::App& series, Program& program);

}  // namespace cp::cli
