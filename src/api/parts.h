// SPDX-License-Identifier: Apache-2.0
// The parts that answers are made of, and what every command does with its puzzle first.
#pragma once

#include <string>
#include <vector>

#include "api/answer.h"
#include "exact/solve.h"
#include "grid/position.h"

namespace cp::api {

// [{"cell":"r1c1","digit":5}, ...]
Json candidates_json(const Shape& shape, const std::vector<Candidate>& candidates);
// ["r1c1", ...]
Json cells_json(const Shape& shape, const CellSet& cells);

// Why a position that has_clash() cannot be: "row 3 holds 5 twice, in r3c1 and r3c7". No capital, no full stop.
std::string clash_in_words(const Position& position);

// Runs the basics of deduce/basics.h. Error kNotProper when they show that there is no solution.
Result<Position> after_basics(Position position);

// Reads a puzzle to work on, after the basics if wanted. Error when it cannot be read or shows a clash.
Result<Position> open_position(const std::string& puzzle, bool with_basics);

// None, one, many, or "not settled" within a fixed number of nodes. `first` is a solution if there is one.
struct Properness {
  enum class Solutions { kNone, kOne, kMany, kUnknown } solutions = Solutions::kUnknown;
  std::vector<FullGrid> grids;
};
Properness properness_of(const Position& position);
// "none", "one", "many", "unknown".
std::string_view name_of(Properness::Solutions solutions);

// Error kBadArgument, naming the field, unless low <= value <= high.
std::optional<Answer> out_of_range(std::string_view field, int value, int low, int high);

}  // namespace cp::api
