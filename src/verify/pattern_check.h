// SPDX-License-Identifier: Apache-2.0
// Is a deadly pattern one? Whatever it holds, could its cells be refilled so that every house keeps its digits?
#pragma once

#include "verify/step_check.h"

namespace cp {

// No cell is a given, and each way to fill the pattern has another way to fill the same cells with the same digits in
// every house. Patterns of two digits a cell, each digit twice (or not at all) in each house, are seen without a search.
CheckResult check_pattern(const Position& before, const DeadlyPattern& pattern);

}  // namespace cp
