// SPDX-License-Identifier: Apache-2.0
#include "api/parts.h"

#include "base/text.h"
#include "grid/notation.h"
#include "deduce/basics.h"
#include "speak/naming.h"

namespace cp::api {

namespace {

// Plenty for any 9x9 grid; a few seconds on a 16x16 one.
constexpr std::uint64_t kMostNodes = 20'000'000;

}  // namespace

Json candidates_json(const Shape& shape, const std::vector<Candidate>& candidates) {
  Json list = Json::array();
  for (const Candidate& candidate : candidates) {
    Json item = Json::object();
    item["cell"] = shape.name_of(candidate.cell);
    item["digit"] = candidate.digit.number();
    list.push_back(std::move(item));
  }
  return list;
}

Json cells_json(const Shape& shape, const CellSet& cells) {
  Json list = Json::array();
  for (const Cell cell : cells) list.push_back(shape.name_of(cell));
  return list;
}

std::string clash_in_words(const Position& position) {
  const Shape& shape = position.shape();
  for (int index = 0; index < shape.house_count(); ++index) {
    const House house(index);
    for (const Digit digit : shape.digits()) {
      const CellSet twice = position.placed(digit) & shape.cells(house);
      if (twice.size() > 1) {
        return shape.long_name_of(house) + " holds " + Shape::name_of(digit) + (twice.size() == 2 ? " twice, in " : " several times, in ") +
               cell_names(shape, twice);
      }
    }
  }
  for (const Cell cell : position.open()) {
    if (position.candidates(cell).is_empty()) return "no digit is left for " + shape.name_of(cell);
  }
  for (int index = 0; index < shape.house_count(); ++index) {
    const House house(index);
    for (const Digit digit : shape.digits()) {
      if (position.places(house, digit).is_empty() && !position.is_placed_in(house, digit)) {
        return shape.long_name_of(house) + " has no place left for " + Shape::name_of(digit);
      }
    }
  }
  return "";
}

Result<Position> after_basics(Position position) {
  if (position.has_clash()) {
    return Error{ErrorCode::kNotProper, "the puzzle has no solution: " + clash_in_words(position), "correct the givens", {}};
  }
  if (!run_basics(position)) {
    return Error{ErrorCode::kNotProper, "the puzzle has no solution: singles, locked candidates, subsets and fish end in a contradiction",
                 "correct the givens; `check` tells whether a puzzle has a solution", {}};
  }
  return position;
}

Properness properness_of(const Position& position) {
  using Solutions = Properness::Solutions;
  Properness result;
  SolutionList found = solutions(position, 2, kMostNodes);
  if (found.grids.size() > 1) {
    result.solutions = Solutions::kMany;
  } else if (found.end == SearchEnd::kNodeLimit) {
    result.solutions = Solutions::kUnknown;
  } else {
    result.solutions = found.grids.empty() ? Solutions::kNone : Solutions::kOne;
  }
  result.grids = std::move(found.grids);
  return result;
}

std::string_view name_of(Properness::Solutions solutions) {
  switch (solutions) {
    case Properness::Solutions::kNone: return "none";
    case Properness::Solutions::kOne: return "one";
    case Properness::Solutions::kMany: return "many";
    case Properness::Solutions::kUnknown: return "unknown";
  }
  return "unknown";
}

std::optional<Answer> out_of_range(std::string_view field, int value, int low, int high) {
  if (value >= low && value <= high) return std::nullopt;
  const std::string name(field);
  return refuse(Error{ErrorCode::kBadArgument, name + " is " + to_text(value) + ", which is out of range",
                      "give a whole number from " + to_text(low) + " to " + to_text(high), {}},
                name);
}

Result<Position> open_position(const std::string& puzzle, bool with_basics) {
  auto position = parse_position(puzzle);
  if (!position) return position.error();
  if (with_basics) return after_basics(std::move(*position));
  if (position->has_clash()) {
    return Error{ErrorCode::kNotProper, "the puzzle has no solution: " + clash_in_words(*position), "correct the givens", {}};
  }
  return position;
}

}  // namespace cp::api
