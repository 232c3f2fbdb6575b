// SPDX-License-Identifier: Apache-2.0
#include "claim/additions.h"

#include <algorithm>

#include "base/text.h"
#include "claim/linear_form.h"

namespace cp {

namespace {

using End = FactSearch::End;
using Kind = CertificateFact::Kind;

constexpr int kMostTried = 60;      // eliminations
constexpr std::size_t kFew = 2;     // facts that are named rather than a candidate

CertificateFact house_fact(House house) {
  CertificateFact fact;
  fact.kind = Kind::kHouse;
  fact.house = house;
  return fact;
}

CertificateFact balance_fact(const NamedBalance& balance) {
  CertificateFact fact;
  fact.kind = Kind::kBalance;
  fact.name = balance.name;
  fact.weights = balance.weights;
  return fact;
}

CertificateFact claim_fact(const Shape& shape, const EarlierClaim& earlier) {
  CertificateFact fact;
  fact.kind = Kind::kClaim;
  fact.name = to_text(earlier.number);
  fact.formula = formula_of(shape, earlier.claim, true);
  return fact;
}

class Closer {
 public:
  Closer(const Board& board, const Formula& denial, const CellSet& discussed, std::vector<CertificateFact> facts, int footing, const SearchLimits& limits)
      : board_(board), shape_(board.position.shape()), discussed_(discussed), limits_(limits), footing_(footing), search_(shape_, std::move(facts), denial) {
    for (int i = 0; i < static_cast<int>(search_.facts().size()); ++i) (i < footing ? base_ : spare_).push_back(i);
  }

  // One thing before two, two before many; a candidate outside the cells under discussion before many facts.
  Closing run() {
    one_fact();
    if (closing_.additions.empty()) several_facts();
    const bool is_short = !several_.facts.empty() && several_.facts.size() <= kFew;
    if (closing_.additions.empty() && !is_short && board_.truth) one_elimination(false);
    if (closing_.additions.empty() && !several_.facts.empty()) closing_.additions.push_back(std::move(several_));
    if (closing_.additions.empty() && board_.truth) one_elimination(true);
    closing_.work = search_.work();
    return std::move(closing_);
  }

 private:
  End with(const std::vector<int>& added, const std::vector<Lit>& also = {}) {
    std::vector<int> facts = base_;
    facts.insert(facts.end(), added.begin(), added.end());
    std::uint64_t failures = limits_.failures;
    return search_.solve(facts, failures, also);
  }

  // An assignment breaks the claim. It meets some of the facts that might be added: none of them alone closes the claim.
  void one_fact() {
    if (with({}) != End::kMet) return;
    std::vector<int> met = search_.met_facts();
    closing_.counter = search_.assignment();
    for (const int fact : spare_) {
      if (std::binary_search(met.begin(), met.end(), fact)) continue;
      const End end = with({fact});
      if (end == End::kImpossible && closing_.additions.size() < kMostAdditions) closing_.additions.push_back({{search_.facts()[static_cast<std::size_t>(fact)]}, std::nullopt});
      if (end != End::kMet) continue;
      const std::vector<int> now = search_.met_facts();
      if (now.size() > met.size()) closing_.counter = search_.assignment();
      std::vector<int> either;
      std::set_union(met.begin(), met.end(), now.begin(), now.end(), std::back_inserter(either));
      met = std::move(either);
    }
    make_natural();
  }

  // Adds one rule after the other while the claim can still be broken.
  void make_natural() {
    std::vector<int> kept;
    for (const int fact : spare_) {
      if (search_.facts()[static_cast<std::size_t>(fact)].kind != Kind::kHouse) continue;
      kept.push_back(fact);
      std::uint64_t failures = 500;
      std::vector<int> facts = base_;
      facts.insert(facts.end(), kept.begin(), kept.end());
      if (search_.solve(facts, failures) == End::kMet) closing_.counter = search_.assignment();
      else kept.pop_back();
    }
  }

  void several_facts() {
    if (with(spare_) != End::kImpossible) return;
    std::vector<int> enough;
    for (const int fact : search_.core()) {
      if (fact >= footing_) enough.push_back(fact);
    }
    // Leave one out after the other. The footing costs nothing, so it stays whole.
    for (std::size_t i = enough.size(); i-- > 0;) {
      std::vector<int> rest = enough;
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
      if (with(rest) == End::kImpossible) enough = std::move(rest);
    }
    two_facts(enough);
    for (const int fact : enough) several_.facts.push_back(search_.facts()[static_cast<std::size_t>(fact)]);
  }

  // Is there a pair, when more than two were found?
  void two_facts(std::vector<int>& enough) {
    if (enough.size() <= 2) return;
    const std::uint64_t last = search_.work() + limits_.smaller_work;
    for (std::size_t i = 0; i < spare_.size(); ++i) {
      for (std::size_t j = i + 1; j < spare_.size(); ++j) {
        if (search_.work() > last) return;
        if (with({spare_[i], spare_[j]}) != End::kImpossible) continue;
        enough = {spare_[i], spare_[j]};
        return;
      }
    }
  }

  // A false candidate whose striking out would do. It must be in every assignment that breaks the claim, so those of one are
  // enough to try.
  void one_elimination(bool is_among_discussed) {
    if (with({}) != End::kMet) return;
    const Assignment broken = search_.assignment();
    int tried = 0;
    for (const Cell cell : shape_.all_cells()) {
      const Digit digit = broken.at(cell);
      if (digit == board_.truth->at(cell) || !board_.position.candidates(cell).has(digit) || discussed_.has(cell) != is_among_discussed) continue;
      if (++tried > kMostTried) return;
      if (with({}, {lit_of(variable_of(shape_, {cell, digit}), false)}) != End::kImpossible) continue;
      closing_.additions.push_back({{}, Candidate{cell, digit}});
      if (closing_.additions.size() >= kMostAdditions) return;
    }
  }

  const Board& board_;
  const Shape& shape_;
  const CellSet& discussed_;
  const SearchLimits& limits_;
  int footing_;
  FactSearch search_;
  std::vector<int> base_;
  std::vector<int> spare_;
  Addition several_;
  Closing closing_;
};

}  // namespace

std::vector<CertificateFact> facts_of(const Position& position, const Ground& ground) {
  const Shape& shape = position.shape();
  std::vector<CertificateFact> facts;
  for (const House house : ground.houses) facts.push_back(house_fact(house));
  for (const NamedBalance& balance : ground.balances) facts.push_back(balance_fact(balance));
  for (const EarlierClaim& claim : ground.claims) facts.push_back(claim_fact(shape, claim));
  for (const Cell cell : shape.all_cells()) {
    if (position.candidates(cell) == shape.digits() || (!ground.has_marks && !position.is_placed(cell))) continue;
    CertificateFact fact;
    fact.kind = Kind::kMarks;
    fact.cell = cell;
    fact.digits = position.candidates(cell);
    facts.push_back(std::move(fact));
  }
  // What is plainest comes first: the search names the first facts that are enough.
  const auto marks = std::find_if(facts.begin(), facts.end(), [](const CertificateFact& fact) { return fact.kind == Kind::kMarks; });
  std::stable_sort(marks, facts.end(), [](const CertificateFact& a, const CertificateFact& b) { return a.digits.size() < b.digits.size(); });
  return facts;
}

Closing close_claim(const Board& board, const Formula& denial, const CellSet& discussed, const std::vector<CertificateFact>& footing, const Ground& ground, const Spare& spare, const SearchLimits& limits) {
  const Shape& shape = board.position.shape();
  std::vector<CertificateFact> facts = footing;
  for (const NamedBalance& balance : spare.balances) facts.push_back(balance_fact(balance));
  for (const EarlierClaim& claim : spare.claims) facts.push_back(claim_fact(shape, claim));
  for (int house = 0; house < shape.house_count(); ++house) {
    if (!std::binary_search(ground.houses.begin(), ground.houses.end(), House(house))) facts.push_back(house_fact(House(house)));
  }
  if (!ground.has_marks) {
    for (const CertificateFact& fact : facts_of(board.position, {true, {}, {}, {}})) {
      if (!board.position.is_placed(fact.cell)) facts.push_back(fact);
    }
  }
  return Closer(board, denial, discussed, std::move(facts), static_cast<int>(footing.size()), limits).run();
}

}  // namespace cp
