// SPDX-License-Identifier: Apache-2.0
// Reads the text cases of techniques. The format is described in docs/formats/case.md.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "grid/position.h"

namespace cp::cases {

// One step a case expects.
struct ExpectedStep {
  std::vector<Candidate> placements;
  std::vector<Candidate> eliminations;

  friend bool operator==(const ExpectedStep&, const ExpectedStep&) = default;
};

struct Case {
  std::string name;
  std::string shows;   // one sentence
  int line = 0;        // where it starts
  Position position;
  std::vector<ExpectedStep> expected;  // all steps of the technique in order; empty: nothing
};

// All cases of a file. Errors carry the line.
Result<std::vector<Case>> read_cases(std::string_view text);

// "r1c3 != 3, r1c3 != 7" or "r2c2 = 5", for messages.
std::string to_text(const Shape& shape, const ExpectedStep& step);

}  // namespace cp::cases
