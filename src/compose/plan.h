// SPDX-License-Identifier: Apache-2.0
// What shall the puzzle be like? A plan says where givens may stand, which idea is to be the way in, what must not
// suffice, and what may follow. Its text form is docs/formats/plan.md.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "balance/infer.h"
#include "deduce/basics.h"

namespace cp {

inline constexpr std::string_view kPlanFirstLine = "counterpoise plan 1";

// The idea that has to move the puzzle where everything before it stops.
struct PlannedIdea {
  enum class Kind : std::uint8_t {
    kHouses,      // a balance, its houses named
    kOfAKind,     // a balance of so many rows, columns and boxes against so many, whichever these are
    kAnyBalance,  // the best balance that says something
    kTechnique,   // a technique of the catalogue
  };
  Kind kind = Kind::kAnyBalance;
  std::vector<Weight> weights;             // kHouses
  std::array<int, 3> left{};               // kOfAKind: rows, columns, boxes in the left pan
  std::array<int, 3> right{};
  std::string technique;                   // kTechnique: its id
  int level = 4;                           // highest level of reasoning about a balance, 1..5
  int slack = 1;                           // most free slack of a balance, 0..2

  [[nodiscard]] bool is_balance() const { return kind != Kind::kTechnique; }
  friend bool operator==(const PlannedIdea&, const PlannedIdea&) = default;
};

// A region of the board whose givens are counted.
struct Look {
  enum class Region : std::uint8_t { kLeft, kRight, kCancelled, kOutside, kHouses };
  Region region = Region::kLeft;
  std::vector<House> houses;  // kHouses: the cells of these together
  int least = 0;              // givens
  int most = 0;
  // The bounds count empty cells: "all but 1" is least = most = 1 with this flag.
  bool counts_empty = false;
  TextSpan where = {};  // in the text it was read from; no part of what it says

  [[nodiscard]] bool is_at_region_of(const Look& other) const { return region == other.region && houses == other.houses; }
  friend bool operator==(const Look& a, const Look& b) {
    return a.is_at_region_of(b) && a.least == b.least && a.most == b.most && a.counts_empty == b.counts_empty;
  }
};

// How the pattern of givens may be turned or mirrored without changing it.
enum class Symmetry : std::uint8_t { kHalfTurn, kQuarterTurn, kLeftRight, kTopBottom, kDiagonal, kAntidiagonal };

inline constexpr char kMayHold = '?';
inline constexpr char kMustHold = 'x';
inline constexpr char kStaysEmpty = '.';

struct Plan {
  std::string title;
  PlannedIdea idea;
  std::vector<std::string> before = basic_families();  // names of path/selection.h: what may be used up to the idea
  std::vector<std::string> without;   // none of these says anything where `before` stops
  std::vector<std::string> after = basic_families();   // what may be used after the idea
  int least_givens = 17;
  int most_givens = 36;
  std::vector<Symmetry> symmetries;   // ordered, none twice
  std::vector<Look> looks;
  std::string pattern;                // one character a cell: ? x . or a digit; empty: every cell may hold a given
  bool minimal = false;               // no given may be superfluous

  friend bool operator==(const Plan&, const Plan&) = default;
};

// The grid that plans are made for.
inline const Shape& plan_shape() { return standard_shape(); }

// Errors: kBadArgument or kBadName with the place and a hint. What reads well may still be impossible: PlanGround tells.
Result<Plan> parse_plan(std::string_view text);

// The plan as text; parse_plan() reads it back to an equal plan. Comments of the original are not kept.
std::string to_text(const Plan& plan);

// "c1,c2 against r3,b4", "3 rows against 4 columns", "any balance", "technique xy-wing".
std::string idea_text(const PlannedIdea& idea);
// "left all but 1", "r1,r2 at most 9".
std::string look_text(const Look& look);

}  // namespace cp
