// SPDX-License-Identifier: Apache-2.0
#include "claim/proof_trace.h"

#include <algorithm>

#include "claim/linear_form.h"

namespace cp {

namespace {

using Source = RowName::Source;

// Can "one of its variables is true" be read off the row?
bool says_some(const Row& row) {
  return row.least == 1 && std::all_of(row.terms.begin(), row.terms.end(), [](const RowTerm& term) { return term.factor == 1; });
}

void append(std::vector<ProofItem>& to, const std::vector<ProofItem>& from) { to.insert(to.end(), from.begin(), from.end()); }

}  // namespace

NamedRows named_rows(const Shape& shape, const std::vector<CertificateFact>& facts, const Formula& denial, std::vector<HouseSum> sums) {
  NamedRows named;
  const auto add = [&named](Row row, RowName name) {
    const bool can_split = says_some(row);
    named.entries.push_back({std::move(row), {{name, 1}}, can_split, false});
  };
  int next = candidate_variables(shape);
  for (const Cell cell : shape.all_cells()) add(cell_row(shape, cell), {Source::kCell, cell.index, 0});
  for (std::size_t i = 0; i < facts.size(); ++i) {
    int number = 0;
    for (Row& row : rows_of(shape, facts[i], next)) add(std::move(row), {Source::kFact, static_cast<int>(i), number++});
  }
  const std::vector<Row> denied = flattened(denial, next);
  int number = 0;
  for (const Row& row : denied) {
    for (const RowTerm& term : row.terms) {
      if (term.variable < candidate_variables(shape)) named.entries[static_cast<std::size_t>(term.variable / shape.side())].is_central = true;
    }
  }
  for (const Row& row : denied) add(row, {Source::kDenial, 0, number++});
  for (HouseSum& sum : house_sums(shape, facts, denied)) {
    if (std::none_of(sums.begin(), sums.end(), [&sum](const HouseSum& other) { return other.row == sum.row; })) sums.push_back(std::move(sum));
  }
  for (HouseSum& sum : sums) named.entries.push_back({std::move(sum.row), std::move(sum.uses), false, false});
  named.variables = next;
  return named;
}

void Traced::merge(const Traced& other) {
  for (std::size_t i = 0; i < needed.size(); ++i) needed[i] = static_cast<char>(needed[i] | other.needed[i]);
  lemmas.insert(lemmas.end(), other.lemmas.begin(), other.lemmas.end());
}

ProofTrace::ProofTrace(const NamedRows& rows) : trail(rows.variables), rows_(rows) {
  for (std::size_t i = 0; i < rows.entries.size(); ++i) trail.add(rows.entries[i].row, static_cast<int>(i));
}

void ProofTrace::add_lemma(const std::vector<Lit>& supposed) {
  std::vector<Lit> clause;
  for (const Lit lit : supposed) clause.push_back(opposite(lit));
  trail.add_clause(clause, static_cast<int>(rows_.entries.size()) + lemmas_++);
}

std::vector<RowUse> ProofTrace::uses_of(int row) const {
  const auto tag = static_cast<std::size_t>(trail.tag(row));
  if (tag < rows_.entries.size()) return rows_.entries[tag].uses;
  return {{{Source::kLemma, static_cast<int>(tag - rows_.entries.size()), 0}, 1}};
}

void ProofTrace::need(Traced& traced, int row, Lit forced) const {
  std::vector<Lit> because;
  trail.explain(row, forced, because);
  for (const Lit lit : because) traced.needed[static_cast<std::size_t>(variable_of(lit))] = 1;
  const int lemma = trail.tag(row) - static_cast<int>(rows_.entries.size());
  if (lemma >= 0) traced.lemmas.push_back(lemma);
}

Traced ProofTrace::clash(int row, std::size_t start) const {
  Traced traced;
  traced.needed.assign(static_cast<std::size_t>(trail.variables()), 0);
  need(traced, row, -1);
  traced.items.push_back({ProofItem::Kind::kClash, uses_of(row), {}, {}});
  precede(traced, start, trail.trail().size());
  return traced;
}

void ProofTrace::unit_step(Traced& traced, Lit lit) const {
  const int row = trail.reason(variable_of(lit));
  need(traced, row, lit);
  traced.items.push_back({ProofItem::Kind::kUse, uses_of(row), {literal_of(lit)}, {}});
}

void ProofTrace::precede(Traced& traced, std::size_t start, std::size_t end) const {
  Traced before;
  before.needed = std::move(traced.needed);
  int last_tag = -1;
  for (std::size_t at = end; at-- > start;) {
    const Lit lit = trail.trail()[at];
    const int row = trail.reason(variable_of(lit));
    if (before.needed[static_cast<std::size_t>(variable_of(lit))] == 0 || row == RowTrail::kNoRow) continue;
    if (trail.tag(row) == last_tag) {
      need(before, row, lit);
      before.items.back().literals.push_back(literal_of(lit));
    } else {
      unit_step(before, lit);
    }
    last_tag = trail.tag(row);
  }
  std::reverse(before.items.begin(), before.items.end());
  // In the order in which they followed: one may rest on the one before.
  for (ProofItem& item : before.items) std::reverse(item.literals.begin(), item.literals.end());
  append(before.items, traced.items);
  before.lemmas.insert(before.lemmas.end(), traced.lemmas.begin(), traced.lemmas.end());
  traced = std::move(before);
}

}  // namespace cp
