// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/forcing.h"

#include <algorithm>
#include <bit>

#include "deduce/detail/guard.h"

namespace cp::deduce {

namespace {

using Bits = std::vector<std::uint64_t>;

class ForcingSearch {
 public:
  ForcingSearch(const ForcingPlan& plan, const Position& position) : plan_(plan), table_(position), supposition_(table_, plan.following) {}

  void run(StepSink& sink) {
    supposition_.suppose(Supposition::kNothing);
    if (supposition_.is_impossible()) return;
    said_ = supposition_.struck();
    struck_.resize(static_cast<std::size_t>(table_.candidate_numbers()));
    is_impossible_.resize(struck_.size(), false);
    for (const std::int16_t candidate : table_.all_candidates()) {
      supposition_.suppose(candidate);
      is_impossible_[static_cast<std::size_t>(candidate)] = supposition_.is_impossible();
      struck_[static_cast<std::size_t>(candidate)] = supposition_.struck();
    }
    for (const FactTable::Fact* fact : facts_in_order()) {
      if (!report(*fact, sink)) return;
    }
  }

 private:
  // Facts to split, those with fewer cases first.
  [[nodiscard]] std::vector<const FactTable::Fact*> facts_in_order() const {
    std::vector<const FactTable::Fact*> facts;
    for (const FactTable::Fact& fact : table_.facts()) {
      const bool is_cell = fact.constraint.kind == Constraint::Kind::kCell;
      if (fact.candidates.size() >= 2 && (is_cell ? plan_.splits_cells : plan_.splits_houses)) facts.push_back(&fact);
    }
    std::stable_sort(facts.begin(), facts.end(), [](const auto* a, const auto* b) { return a->candidates.size() < b->candidates.size(); });
    return facts;
  }

  // What falls in every case and was not said before; nothing when the fact is passed over.
  [[nodiscard]] Bits common(const FactTable::Fact& fact) const {
    const std::size_t cases = fact.candidates.size() - (is_weakened(plan_.technique, Guard::kSound) ? 1 : 0);
    Bits all;
    for (std::size_t i = 0; i < cases; ++i) {
      const auto candidate = static_cast<std::size_t>(fact.candidates[i]);
      if (is_impossible_[candidate] && !plan_.counts_impossible) return {};
      if (is_impossible_[candidate]) continue;
      if (all.empty()) all = struck_[candidate];
      for (std::size_t k = 0; k < all.size(); ++k) all[k] &= struck_[candidate][k];
    }
    for (std::size_t k = 0; k < all.size(); ++k) all[k] &= ~said_[k];
    return all;
  }

  bool report(const FactTable::Fact& fact, StepSink& sink) {
    const Bits forced = common(fact);
    for (std::size_t word = 0; word < forced.size(); ++word) {
      said_[word] |= forced[word];
      for (std::uint64_t left = forced[word]; left != 0; left &= left - 1) {
        if (!sink.take(step_for(fact, static_cast<int>(word) * 64 + std::countr_zero(left)))) return false;
      }
    }
    return true;
  }

  [[nodiscard]] Step step_for(const FactTable::Fact& fact, int forced) {
    std::vector<Argument> cases;
    for (const std::int16_t candidate : fact.candidates) {
      supposition_.suppose(candidate);
      cases.push_back({supposition_.is_impossible() ? supposition_.lines_to_end() : supposition_.lines_striking(forced), {}, {}});
    }
    return by_cases(plan_.technique, {table_.candidate(forced)}, fact.constraint, std::move(cases));
  }

  const ForcingPlan& plan_;
  FactTable table_;
  Supposition supposition_;
  Bits said_;
  std::vector<Bits> struck_;  // by candidate number
  std::vector<bool> is_impossible_;
};

}  // namespace

void find_forced(const ForcingPlan& plan, const Position& position, StepSink& sink) { ForcingSearch(plan, position).run(sink); }

}  // namespace cp::deduce
