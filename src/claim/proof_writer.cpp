// SPDX-License-Identifier: Apache-2.0
#include "claim/proof_writer.h"

#include <algorithm>

#include "claim/proof_trace.h"

namespace cp {

namespace {

using Kind = ProofItem::Kind;
using Items = std::vector<ProofItem>;

constexpr std::size_t kManyCases = 4;

// Cases within cases, as few as an iterated depth finds.
class CaseWriter {
 public:
  CaseWriter(const NamedRows& rows, const ProofLimits& limits) : trace_(rows), nodes_left_(limits.split_nodes) {}

  std::optional<Items> write(int most_depth) {
    for (int depth = 0; depth <= most_depth; ++depth) {
      if (auto traced = refute(0, depth)) return std::move(traced->items);
      if (nodes_left_ <= 0) break;
    }
    return std::nullopt;
  }

 private:
  struct Split {
    const NamedRows::Entry* entry;
    std::vector<Lit> open;
    std::vector<Lit> closed;
  };

  // `start`: what the trail held before this supposition.
  std::optional<Traced> refute(std::size_t start, int depth) {
    --nodes_left_;
    const int broken = trace_.trail.propagate();
    if (broken != RowTrail::kNoRow) return trace_.clash(broken, start);
    if (depth == 0) return std::nullopt;
    for (const Split& split : splits(depth == 1 ? 4 : 3, depth == 1 && start == 0)) {
      if (nodes_left_ <= 0) return std::nullopt;
      if (auto traced = by_cases(split, start, depth)) return traced;
    }
    return std::nullopt;
  }

  // `most`: how many cases a split may have; `wide`: central cells may have more.
  std::vector<Split> splits(std::size_t most, bool wide) {
    std::vector<Split> found;
    for (const NamedRows::Entry& entry : trace_.rows().entries) {
      if (!entry.can_split) continue;
      Split split{&entry, {}, {}};
      bool is_met = false;
      for (const RowTerm& term : entry.row.terms) {
        const Lit lit = lit_of(term.variable, true);
        is_met = is_met || trace_.trail.value(lit) > 0;
        (trace_.trail.value(lit) == 0 ? split.open : split.closed).push_back(lit);
      }
      if (!is_met && (split.open.size() <= most || (wide && entry.is_central))) found.push_back(std::move(split));
    }
    std::stable_sort(found.begin(), found.end(), [](const Split& a, const Split& b) { return a.open.size() < b.open.size(); });
    return found;
  }

  std::optional<Traced> by_cases(const Split& split, std::size_t start, int depth) {
    const std::size_t here = trace_.trail.trail().size();
    Traced traced;
    traced.needed.assign(static_cast<std::size_t>(trace_.trail.variables()), 0);
    ProofItem item{Kind::kSplit, split.entry->uses, {}, {}};
    for (const Lit lit : split.open) {
      trace_.trail.assign(lit, RowTrail::kNoRow);
      auto inner = refute(here, depth - 1);
      trace_.trail.undo_to(here);
      if (!inner) return std::nullopt;
      if (inner->needed[static_cast<std::size_t>(variable_of(lit))] == 0) {
        // The supposition was not needed: the clash is there without it.
        trace_.precede(*inner, start, here);
        return inner;
      }
      inner->needed[static_cast<std::size_t>(variable_of(lit))] = 0;
      traced.merge(*inner);
      item.proofs.push_back(std::move(inner->items));
    }
    for (const Lit lit : split.closed) traced.needed[static_cast<std::size_t>(variable_of(lit))] = 1;
    traced.items.push_back(std::move(item));
    trace_.precede(traced, start, here);
    return traced;
  }

  ProofTrace trace_;
  int nodes_left_;
};

// One lemma after the other, as the search learned them; those that are not needed are dropped at the end.
class LemmaWriter {
 public:
  explicit LemmaWriter(const NamedRows& rows) : trace_(rows) {}

  std::optional<Items> write(const std::vector<std::vector<Lit>>& learned) {
    for (const std::vector<Lit>& clause : learned) {
      if (settle()) return assemble();
      if (!prove(clause)) return std::nullopt;
    }
    if (settle()) return assemble();
    return std::nullopt;
  }

 private:
  // Unit steps outside of any supposition. True when they end in a clash.
  bool settle() {
    const int broken = trace_.trail.propagate();
    order_.resize(trace_.trail.trail().size(), trace_.lemma_count());
    if (broken == RowTrail::kNoRow) return false;
    end_ = trace_.clash(broken, trace_.trail.trail().size());
    return true;
  }

  bool prove(const std::vector<Lit>& clause) {
    const std::size_t here = trace_.trail.trail().size();
    for (const Lit lit : clause) {
      if (trace_.trail.value(lit) > 0) {
        trace_.trail.undo_to(here);
        return true;  // known already: whoever would use it has better
      }
      if (trace_.trail.value(lit) == 0) trace_.trail.assign(opposite(lit), RowTrail::kNoRow);
    }
    const int broken = trace_.trail.propagate();
    if (broken == RowTrail::kNoRow) return false;
    Traced traced = trace_.clash(broken, here);
    std::vector<Lit> supposed;
    for (const Lit lit : clause) {
      char& needed = traced.needed[static_cast<std::size_t>(variable_of(lit))];
      if (needed == 0 || trace_.trail.place(variable_of(lit)) < static_cast<int>(here)) continue;
      needed = 0;
      supposed.push_back(opposite(lit));
    }
    trace_.trail.undo_to(here);
    if (supposed.empty()) return false;  // a clash outside of the supposition would have shown before
    trace_.add_lemma(supposed);
    proofs_.push_back(std::move(traced));
    supposed_.push_back(std::move(supposed));
    return true;
  }

  Items assemble() {
    std::vector<char> used(proofs_.size(), 0);
    Traced all = std::move(end_);
    std::reverse(all.items.begin(), all.items.end());
    const auto note = [&] {
      for (const int lemma : all.lemmas) used[static_cast<std::size_t>(lemma)] = 1;
      all.lemmas.clear();
    };
    note();
    std::size_t at = trace_.trail.trail().size();
    for (std::size_t lemma = proofs_.size() + 1; lemma-- > 0;) {
      // What was known before the lemma with this number was found: order_ counts the lemmas before.
      for (; at > 0 && order_[at - 1] >= static_cast<int>(lemma); --at) {
        const Lit lit = trace_.trail.trail()[at - 1];
        if (all.needed[static_cast<std::size_t>(variable_of(lit))] == 0) continue;
        trace_.unit_step(all, lit);
        note();
      }
      if (lemma == 0 || used[lemma - 1] == 0) continue;
      const Traced& proof = proofs_[lemma - 1];
      all.merge(proof);
      note();
      ProofItem item{Kind::kLemma, {}, {}, {proof.items}};
      for (const Lit lit : supposed_[lemma - 1]) item.literals.push_back(literal_of(lit));
      all.items.push_back(std::move(item));
    }
    std::reverse(all.items.begin(), all.items.end());
    renumber(all.items, used);
    return std::move(all.items);
  }

  static void renumber(Items& items, const std::vector<char>& used) {
    std::vector<int> number;
    int next = 0;
    for (const char is_used : used) number.push_back(is_used != 0 ? next++ : -1);
    for (ProofItem& item : items) renumber_item(item, number);
  }

  static void renumber_item(ProofItem& item, const std::vector<int>& number) {
    for (RowUse& use : item.rows) {
      if (use.row.source == RowName::Source::kLemma) use.row.index = number[static_cast<std::size_t>(use.row.index)];
    }
    for (Items& proof : item.proofs) {
      for (ProofItem& inner : proof) renumber_item(inner, number);
    }
  }

  ProofTrace trace_;
  std::vector<int> order_;  // for each literal of the trail: lemmas found before it
  std::vector<Traced> proofs_;
  std::vector<std::vector<Lit>> supposed_;
  Traced end_;
};

std::size_t size_of(const Items& items) {
  std::size_t size = items.size();
  for (const ProofItem& item : items) {
    for (const Items& proof : item.proofs) size += size_of(proof);
  }
  return size;
}

std::optional<Items> by_lemmas(const NamedRows& rows, const ProofLimits& limits) {
  RowSolver solver(rows.variables);
  for (const NamedRows::Entry& entry : rows.entries) solver.add(entry.row, 0);
  std::uint64_t failures = limits.failures;
  if (solver.solve({}, failures) != RowSolver::End::kImpossible) return std::nullopt;
  return LemmaWriter(rows).write(solver.learned());
}

}  // namespace

std::optional<Certificate> write_certificate(const Shape& shape, std::vector<CertificateFact> facts, Formula denial, std::vector<HouseSum> sums, const ProofLimits& limits) {
  Certificate certificate{std::move(facts), std::move(denial), {}};
  const NamedRows rows = named_rows(shape, certificate.facts, certificate.denial, std::move(sums));
  auto items = CaseWriter(rows, limits).write(limits.split_depth);
  // Many cases: perhaps it is shorter the other way.
  if (!items || items->back().proofs.size() > kManyCases) {
    auto other = by_lemmas(rows, limits);
    if (other && (!items || size_of(*other) < size_of(*items))) items = std::move(other);
  }
  if (!items) return std::nullopt;
  certificate.proof = std::move(*items);
  return certificate;
}

}  // namespace cp
