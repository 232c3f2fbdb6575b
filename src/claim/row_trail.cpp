// SPDX-License-Identifier: Apache-2.0
#include "claim/row_trail.h"

#include <algorithm>
#include <cassert>

namespace cp {

RowTrail::RowTrail(int variables)
    : watchers_(static_cast<std::size_t>(2 * variables)),
      rows_with_(static_cast<std::size_t>(2 * variables)),
      values_(static_cast<std::size_t>(2 * variables), 0),
      reason_(static_cast<std::size_t>(variables), kNoRow),
      place_(static_cast<std::size_t>(variables), 0) {}

void RowTrail::add_plain(PlainRow row) {
  assert(done_ == trail_.size());
  const int number = static_cast<int>(rows_.size());
  for (Term& term : row.terms) term.factor = std::min(term.factor, row.need);
  std::stable_sort(row.terms.begin() + row.guards, row.terms.end(), [](const Term& a, const Term& b) { return a.factor > b.factor; });
  Gauge gauge{-row.need, 0, row.guards > 0 ? row.need : 0};
  if (static_cast<int>(row.terms.size()) > row.guards) gauge.largest = row.terms[static_cast<std::size_t>(row.guards)].factor;
  for (const Term& term : row.terms) {
    if (value(term.lit) >= 0) gauge.slack += term.factor;
    rows_with_[static_cast<std::size_t>(term.lit)].push_back({number, term.factor});
  }
  rows_.push_back(std::move(row));
  gauges_.push_back(gauge);
  fresh_.push_back(number);
}

void RowTrail::add(const Row& row, int tag, const std::vector<int>& guards) {
  for (const bool reversed : {false, true}) {
    if (reversed && !row.is_exact) break;
    PlainRow plain;
    plain.tag = tag;
    plain.need = reversed ? -row.least : row.least;
    for (const RowTerm& term : row.terms) plain.need += std::max(reversed ? term.factor : -term.factor, 0);
    if (plain.need <= 0) continue;
    plain.guards = static_cast<int>(guards.size());
    for (const int guard : guards) plain.terms.push_back({lit_of(guard, false), plain.need});
    for (const RowTerm& term : row.terms) {
      const int factor = reversed ? -term.factor : term.factor;
      if (factor != 0) plain.terms.push_back({lit_of(term.variable, factor > 0), std::abs(factor)});
    }
    add_plain(std::move(plain));
  }
}

void RowTrail::add_clause(const std::vector<Lit>& lits, int tag) {
  assert(done_ == trail_.size());
  const int number = static_cast<int>(clauses_.size());
  clauses_.push_back({lits, tag});
  if (lits.size() < 2) {
    fresh_.push_back(kFirstClause + number);
    return;
  }
  // The second watch becomes open again first when assignments are taken back.
  std::vector<Lit>& kept = clauses_.back().lits;
  for (std::size_t i = 2; i < kept.size(); ++i) {
    if (value(kept[1]) < 0 && (value(kept[i]) >= 0 || place(variable_of(kept[i])) > place(variable_of(kept[1])))) std::swap(kept[1], kept[i]);
  }
  watch(number);
  fresh_.push_back(kFirstClause + number);
}

void RowTrail::watch(int clause) {
  const std::vector<Lit>& lits = clauses_[static_cast<std::size_t>(clause)].lits;
  watchers_[static_cast<std::size_t>(lits[0])].push_back({clause, lits[1]});
  watchers_[static_cast<std::size_t>(lits[1])].push_back({clause, lits[0]});
}

void RowTrail::keep_clauses(const std::vector<char>& is_kept) {
  std::vector<Clause> kept;
  for (std::size_t i = 0; i < clauses_.size(); ++i) {
    if (is_kept[i] != 0) kept.push_back(std::move(clauses_[i]));
  }
  clauses_ = std::move(kept);
  for (auto& list : watchers_) list.clear();
  for (std::size_t i = 0; i < clauses_.size(); ++i) {
    if (clauses_[i].lits.size() > 1) watch(static_cast<int>(i));
  }
}

void RowTrail::assign(Lit lit, int row) {
  assert(value(lit) == 0);
  values_[static_cast<std::size_t>(lit)] = 1;
  values_[static_cast<std::size_t>(opposite(lit))] = -1;
  reason_[static_cast<std::size_t>(variable_of(lit))] = row;
  place_[static_cast<std::size_t>(variable_of(lit))] = static_cast<int>(trail_.size());
  trail_.push_back(lit);
}

bool RowTrail::look_at(int number) {
  if (number >= kFirstClause) {
    const std::vector<Lit>& lits = clauses_[static_cast<std::size_t>(number - kFirstClause)].lits;
    if (lits.empty() || value(lits[0]) < 0) return lits.size() > 1 && value(lits[1]) >= 0;
    if (value(lits[0]) == 0 && (lits.size() == 1 || value(lits[1]) < 0)) assign(lits[0], number);
    return true;
  }
  const int slack = gauges_[static_cast<std::size_t>(number)].slack;
  if (slack < 0) return false;
  const PlainRow& row = rows_[static_cast<std::size_t>(number)];
  for (std::size_t i = 0; i < row.terms.size(); ++i) {
    const Term& term = row.terms[i];
    if (term.factor <= slack) {
      if (static_cast<int>(i) >= row.guards) break;
      continue;
    }
    ++work_;
    if (value(term.lit) == 0) assign(term.lit, number);
  }
  return true;
}

bool RowTrail::needs_a_look(int number) const {
  const Gauge& gauge = gauges_[static_cast<std::size_t>(number)];
  if (gauge.slack < gauge.largest) return true;
  if (gauge.slack >= gauge.guard_factor) return false;
  // Only a guard could be forced, and only the last one that is open.
  const PlainRow& row = rows_[static_cast<std::size_t>(number)];
  for (int i = 0; i < row.guards; ++i) {
    if (value(row.terms[static_cast<std::size_t>(i)].lit) >= 0) return true;
  }
  return false;
}

int RowTrail::look_at_clauses(Lit lit) {
  std::vector<Watch>& watching = watchers_[static_cast<std::size_t>(lit)];
  std::size_t kept = 0;
  std::size_t i = 0;
  int broken = kNoRow;
  while (i < watching.size() && broken == kNoRow) {
    const Watch at = watching[i++];
    watching[kept++] = at;
    ++work_;
    if (value(at.other) > 0) continue;
    std::vector<Lit>& lits = clauses_[static_cast<std::size_t>(at.clause)].lits;
    if (lits[0] == lit) std::swap(lits[0], lits[1]);
    watching[kept - 1].other = lits[0];
    if (value(lits[0]) > 0) continue;
    std::size_t other = 2;
    while (other < lits.size() && value(lits[other]) < 0) ++other;
    if (other < lits.size()) {
      std::swap(lits[1], lits[other]);
      watchers_[static_cast<std::size_t>(lits[1])].push_back({at.clause, lits[0]});
      --kept;
    } else if (value(lits[0]) < 0) {
      broken = kFirstClause + at.clause;
    } else {
      assign(lits[0], kFirstClause + at.clause);
    }
  }
  watching.erase(watching.begin() + static_cast<std::ptrdiff_t>(kept), watching.begin() + static_cast<std::ptrdiff_t>(i));
  return broken;
}

int RowTrail::propagate() {
  while (!fresh_.empty()) {
    const int row = fresh_.back();
    if (!look_at(row)) return row;
    fresh_.pop_back();
  }
  while (done_ < trail_.size()) {
    const Lit lit = opposite(trail_[done_++]);
    // All counts first, so that undo_to() finds them whole whatever is met on the way.
    const auto& occurrences = rows_with_[static_cast<std::size_t>(lit)];
    work_ += occurrences.size();
    for (const Occurrence& at : occurrences) gauges_[static_cast<std::size_t>(at.row)].slack -= at.factor;
    for (const Occurrence& at : occurrences) {
      if (needs_a_look(at.row) && !look_at(at.row)) return at.row;
    }
    const int broken = look_at_clauses(lit);
    if (broken != kNoRow) return broken;
  }
  return kNoRow;
}

void RowTrail::undo_to(std::size_t size) {
  while (trail_.size() > size) {
    const Lit lit = trail_.back();
    trail_.pop_back();
    if (done_ > trail_.size()) {
      for (const Occurrence& at : rows_with_[static_cast<std::size_t>(opposite(lit))]) gauges_[static_cast<std::size_t>(at.row)].slack += at.factor;
      done_ = trail_.size();
    }
    values_[static_cast<std::size_t>(lit)] = 0;
    values_[static_cast<std::size_t>(opposite(lit))] = 0;
  }
}

void RowTrail::explain(int number, Lit forced, std::vector<Lit>& because) const {
  because.clear();
  if (number >= kFirstClause) {
    for (const Lit lit : clauses_[static_cast<std::size_t>(number - kFirstClause)].lits) {
      if (lit != forced) because.push_back(opposite(lit));
    }
    return;
  }
  const PlainRow& row = rows_[static_cast<std::size_t>(number)];
  const int before = forced < 0 ? static_cast<int>(trail_.size()) : place(variable_of(forced));
  int room = -row.need;  // what the row would still have beyond its need if none of the chosen were false
  for (const Term& term : row.terms) {
    if (term.lit != forced) room += term.factor;
  }
  for (const Term& term : row.terms) {
    if (room < 0) break;
    if (value(term.lit) >= 0 || place(variable_of(term.lit)) >= before) continue;
    because.push_back(opposite(term.lit));
    room -= term.factor;
  }
  assert(room < 0);
}

}  // namespace cp
