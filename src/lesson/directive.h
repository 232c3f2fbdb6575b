// SPDX-License-Identifier: Apache-2.0
// The lines of a lesson that start with '@': what they ask for. docs/formats/lesson_document.md has the list.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "claim/claim_parser.h"
#include "lesson/written_lesson.h"

namespace cp {

// How much of a balance a scene shows.
enum class BalanceView {
  kHouses,      // the houses of both pans
  kRemainders,  // what has cancelled and what is left
  kKnown,       // and the known digits in the pans
  kTally,       // and the account as a table
  kFit,         // the open cells with their candidates, the pans after the tally
  kShares,      // and the shares that are known beforehand
  kCases,       // the open cells once more, the pans with what a case supposes to be shared
  kFalls,       // what the step strikes out
};
std::optional<BalanceView> view_of(std::string_view name);

// What @board asks of the picture.
struct BoardWish {
  std::optional<CellSet> candidates;
  DigitSet lens;
  CellSet focus;
  std::vector<Candidate> framed;
  std::vector<Candidate> struck;
  bool is_hidden = false;
  bool is_after = false;  // the position after the steps of the scene, new digits underlined
};

struct Directive {
  enum class Kind { kApply, kStep, kBalance, kLet, kShow, kClaim, kBoard, kTime, kSolution, kGrid, kAside };

  Kind kind = Kind::kApply;
  std::vector<std::string> techniques;   // kApply: names of path/selection.h
  std::vector<Candidate> placements;     // kStep
  std::vector<Candidate> eliminations;
  std::string name;                      // kStep: after "by", a technique or a balance, or empty; kBalance, kLet, kShow: the name
  std::vector<Weight> weights;           // kBalance
  CellGroup cells;                       // kLet
  BalanceView view = BalanceView::kHouses;
  DigitCounts supposed{};                // kShow, cases: copies that are supposed to be shared
  std::string claim_text;                // kClaim
  Claim claim;
  std::string footing_text;
  Footing footing;
  BoardWish board;
  int seconds = 0;                       // kTime
  std::optional<Position> grid;          // kGrid, kAside
};

// What the words of a directive may refer to.
struct DirectiveScope {
  const Position& position;
  const Vocabulary& names;
  int claims = 0;  // claims asked before
};

// The place of an error counts in the text of the line (offset, length); line and column are those of the file.
Result<Directive> read_directive(const DirectiveScope& scope, const WrittenLine& line);

// Enters the name that a kBalance or kLet gives. Error when it is taken or cannot be a name.
std::optional<Error> enter_name(const Shape& shape, const Directive& directive, Vocabulary& names);

// "r5c7 <> 4, r5c8 <> 4": conclusions as they are written after @step.
std::string conclusions_text(const Shape& shape, const std::vector<Candidate>& placements, const std::vector<Candidate>& eliminations);

// An error about a piece of the text of a line.
Error at_line(const WrittenLine& line, Error error);

}  // namespace cp
