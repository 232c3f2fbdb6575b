// SPDX-License-Identifier: Apache-2.0
// Who sees whom, and what is noted once; shared by the twins of wings, chains and forcing.
#pragma once

#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

// Different cells with a house in common.
inline bool cells_see(const Position& position, Cell a, Cell b) {
  const Shape& shape = position.shape();
  return a != b && (shape.row_of(a) == shape.row_of(b) || shape.column_of(a) == shape.column_of(b) || shape.box_of(a) == shape.box_of(b));
}

// Not both of these candidates can be true.
inline bool exclude_each_other(const Position& position, Candidate a, Candidate b) {
  return (a.cell == b.cell && a.digit != b.digit) || (a.digit == b.digit && cells_see(position, a.cell, b.cell));
}

// The candidates of open cells.
inline std::set<Candidate> open_candidates(const Position& position) {
  std::set<Candidate> all;
  for (const House house : houses_of_kind(position, HouseKind::kRow)) all.merge(candidates_there(position, open_cells(position, house), all_digits(position)));
  return all;
}

// The open cells with so many candidates.
inline std::set<Cell> cells_with_count(const Position& position, std::size_t count) {
  std::set<Cell> cells;
  for (const Candidate& each : open_candidates(position)) {
    if (digits_in(position, {each.cell}).size() == count) cells.insert(each.cell);
  }
  return cells;
}

// Candidates that cannot be true together with any of these.
inline std::set<Candidate> excluded_by_all(const Position& position, const std::set<Candidate>& these) {
  std::set<Candidate> found;
  for (const Candidate& each : open_candidates(position)) {
    bool by_all = true;
    for (const Candidate& other : these) by_all = by_all && exclude_each_other(position, each, other);
    if (by_all) found.insert(each);
  }
  return found;
}

// Notes what is struck out, unless it is nothing or was noted.
inline void note_as_new(Conclusions& conclusions, const std::set<Candidate>& struck) {
  if (!conclusions.contains(Conclusion{{}, struck})) note_struck(conclusions, struck);
}

}  // namespace cp::oracle
