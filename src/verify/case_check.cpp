// SPDX-License-Identifier: Apache-2.0
#include "verify/case_check.h"

#include <algorithm>

namespace cp {

CaseCheck::CaseCheck(const Position& before, const Reweighed& reweighed, const DigitCounts& shares)
    : before_(before), reweighed_(reweighed), shape_(before.shape()) {
  for (const Digit digit : shape_.digits()) {
    const int tally = reweighed.tally[digit.index];
    left_[digit.index] = std::max(tally, 0) + shares[digit.index];
    right_[digit.index] = std::max(-tally, 0) + shares[digit.index];
  }
}

bool CaseCheck::is_live(Cell cell, Digit digit) const {
  return !before_.is_placed(cell) && before_.candidates(cell).has(digit) && !removed_[digit.index].has(cell);
}

bool CaseCheck::has_removed(const Candidate& candidate) const { return removed_[candidate.digit.index].has(candidate.cell); }

// How often the cell counts in the pan; 0 when it is not in it.
int CaseCheck::units_in(Pan pan, Cell cell) const {
  const int units = reweighed_.units[cell.index];
  if (units > 0) return pan == Pan::kRight ? 0 : units;
  return pan == Pan::kLeft ? 0 : -units;
}

int CaseCheck::needed(Pan pan, Digit digit) const {
  return (pan == Pan::kRight ? 0 : left_[digit.index]) + (pan == Pan::kLeft ? 0 : right_[digit.index]);
}

CellSet CaseCheck::places(Pan pan, Digit digit) const {
  CellSet cells;
  for (const Cell cell : shape_.all_cells()) {
    if (units_in(pan, cell) > 0 && is_live(cell, digit)) cells.add(cell);
  }
  return cells;
}

// The most copies (with multiplicity) that one house can hold among the given places; at least 1, for a house that
// is named for nothing.
int CaseCheck::heaviest(Pan pan, House house, Digit digit, const CellSet& among) const {
  int most = 1;
  for (const Cell cell : among) {
    if (shape_.cells(house).has(cell) && is_live(cell, digit)) most = std::max(most, units_in(pan, cell));
  }
  return most;
}

bool CaseCheck::has_room() const {
  for (const Digit digit : shape_.digits()) {
    for (const Pan pan : {Pan::kLeft, Pan::kRight}) {
      int room = 0;
      for (const Cell cell : places(pan, digit)) room += units_in(pan, cell);
      if (room < needed(pan, digit)) return false;
    }
  }
  return true;
}

CheckResult CaseCheck::take(const Lemma& lemma, bool& breaks) {
  breaks = false;
  CheckResult result = CheckResult::no("unknown lemma");
  if (lemma.kind != Lemma::Kind::kCount && lemma.digits.size() != 1) return CheckResult::no("a lemma about houses names one digit");
  if (lemma.kind == Lemma::Kind::kCount) result = take_count(lemma, breaks);
  if (lemma.kind == Lemma::Kind::kCover) result = take_cover(lemma, breaks);
  if (lemma.kind == Lemma::Kind::kSight) result = take_sight(lemma);
  if (!result.holds) return result;
  for (const Candidate& removed : lemma.removed) removed_[removed.digit.index].add(removed.cell);
  return result;
}

CheckResult CaseCheck::take_count(const Lemma& lemma, bool& breaks) {
  int need = 0;
  int have = 0;
  CellSet touched;
  for (const Digit digit : lemma.digits) {
    need += needed(lemma.pan, digit);
    touched |= places(lemma.pan, digit);
  }
  for (const Cell cell : touched) have += units_in(lemma.pan, cell);
  if (have > need) return CheckResult::no("count: more cells than the digits need");
  breaks = have < need;
  for (const Candidate& removed : lemma.removed) {
    if (!touched.has(removed.cell) || lemma.digits.has(removed.digit)) return CheckResult::no("count: strikes out too much");
  }
  return CheckResult::yes();
}

CheckResult CaseCheck::take_cover(const Lemma& lemma, bool& breaks) {
  const Digit digit = lemma.digits.lowest();
  const CellSet inside = places(lemma.pan, digit);
  std::array<int, kMaxCells> taken{};  // copies that the houses of a cell take together
  int room = 0;
  for (const House house : lemma.houses) {
    const int most = heaviest(lemma.pan, house, digit, inside);
    room += most;
    for (const Cell cell : shape_.cells(house)) taken[cell.index] += most;
  }
  for (const Cell cell : inside) {
    if (taken[cell.index] == 0) return CheckResult::no("cover: a place lies outside the houses");
  }
  if (room > needed(lemma.pan, digit)) return CheckResult::no("cover: the houses have room to spare");
  breaks = room < needed(lemma.pan, digit);
  for (const Candidate& removed : lemma.removed) {
    // Inside, a cell may take as much as it counts; outside, nothing.
    const int allowed = inside.has(removed.cell) ? units_in(lemma.pan, removed.cell) : 0;
    if (removed.digit != digit || taken[removed.cell.index] <= allowed) return CheckResult::no("cover: strikes out too much");
  }
  return CheckResult::yes();
}

CheckResult CaseCheck::take_sight(const Lemma& lemma) {
  const Digit digit = lemma.digits.lowest();
  if (lemma.removed.empty()) return CheckResult::no("sight: strikes out nothing");
  for (const Candidate& removed : lemma.removed) {
    if (removed.digit != digit || !is_live(removed.cell, digit)) return CheckResult::no("sight: not a candidate of the digit");
    CellSet rest;
    for (const Cell cell : places(lemma.pan, digit)) {
      if (cell != removed.cell && !shape_.peers(removed.cell).has(cell)) rest.add(cell);
    }
    const int still = needed(lemma.pan, digit) - units_in(lemma.pan, removed.cell);
    CellSet covered;
    int room = 0;
    for (const House house : lemma.houses) {
      covered |= shape_.cells(house);
      room += heaviest(lemma.pan, house, digit, rest);
    }
    if (still < 0) continue;
    if (!rest.is_subset_of(covered)) return CheckResult::no("sight: a place is left over");
    if (room >= still) return CheckResult::no("sight: the rest has room enough");
  }
  return CheckResult::yes();
}

}  // namespace cp
