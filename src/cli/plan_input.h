// SPDX-License-Identifier: Apache-2.0
// PLAN on the command line, and the commands that take one.
#pragma once

#include <string>

#include "base/result.h"
#include "cli/command.h"

namespace cp::cli {

// The text of the file (or of standard input for '-').
Result<std::string> plan_text(const std::string& file);

inline constexpr const char* kPlanHelp = "the file with the plan (docs/formats/plan.md), or - for standard input";

// plan and compose.
void add_compose(Program& program);
// judge, improve and vary.
void add_judge(Program& program);

}  // namespace cp::cli
