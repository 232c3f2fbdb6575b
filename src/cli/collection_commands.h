// SPDX-License-Identifier: Apache-2.0
// The commands that go over whole collections.
#pragma once

#include "cli/command.h"

namespace cp::cli {

void add_scan(Program& program);
void add_portrait(Program& program);

}  // namespace cp::cli
