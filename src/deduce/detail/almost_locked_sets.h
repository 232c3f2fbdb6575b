// SPDX-License-Identifier: Apache-2.0
// Almost locked sets: k open cells of a house whose candidates are k + 1 digits. Take one of the digits away and the
// others are locked in. A cell with two candidates is the smallest one. A set with a locked part (some of its cells with no
// more digits than cells) is left out: the naked subset does its work. Shared by the techniques that join such sets.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <vector>

#include "grid/position.h"
#include "step/step.h"

namespace cp::deduce {

inline constexpr int kMostSetCells = 4;  // larger sets are not looked for

struct AlmostLockedSet {
  House house;  // the first house with all its cells, boxes before rows before columns
  CellSet cells;
  DigitSet digits;
};

// All of up to `most_cells` cells, smallest first, then by house and cells; no two with the same cells.
std::vector<AlmostLockedSet> almost_locked_sets(const Position& position, int most_cells = kMostSetCells);

// The houses that contain all the cells, boxes before rows before columns.
std::vector<House> houses_around(const Shape& shape, const CellSet& cells);
std::optional<House> house_around(const Shape& shape, const CellSet& cells);

// The candidates of a digit that see every one of the cells.
std::vector<Candidate> seeing_all(const Position& position, Digit digit, const CellSet& cells);

// Collects bases and covers, each as often as it is needed, into one weighed sum.
class SumOfSets {
 public:
  void add_base(Constraint base, int times = 1) { bases_[base] -= times; }
  void add_cover(House house, Digit digit, int times = 1) { covers_[Constraint::of(house, digit)] += times; }
  void add_cover(Cell cell, int times = 1) { covers_[Constraint::of(cell)] += times; }
  // The cells of a set as bases and its digits as covers, some digits left out.
  void add_set(const AlmostLockedSet& set, DigitSet except);
  [[nodiscard]] std::vector<LinearTerm> terms() const;

 private:
  std::map<Constraint, int> bases_;
  std::map<Constraint, int> covers_;
};

// What has been reported in this call.
class Reported {
 public:
  bool is_new(const std::vector<Candidate>& eliminations) { return seen_.insert(eliminations).second; }

 private:
  std::set<std::vector<Candidate>> seen_;
};

}  // namespace cp::deduce
