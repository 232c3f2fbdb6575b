// SPDX-License-Identifier: Apache-2.0
// Going through an argument line by line, for whoever tells it (docs/formats/step.md, "Argument reason").
#pragma once

#include <vector>

#include "grid/position.h"
#include "step/argument_reason.h"

namespace cp {

// The candidates that the fact has left, in order.
std::vector<Candidate> candidates_left(const ArgumentReason& reason, const Constraint& fact, const Position& position);

// Strikes out what a weighed sum takes. True when the sum cannot come out.
bool carry_out_line(const Line& line, Position& position);

// What fell between the two.
std::vector<Candidate> fallen(const Position& before, const Position& after);

}  // namespace cp
