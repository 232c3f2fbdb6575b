// SPDX-License-Identifier: Apache-2.0
// Which facts make a claim true? A search over the facts of a footing: the smallest set it finds that cannot go with the
// denial of the claim, or an assignment that goes with all of them.
#pragma once

#include <memory>

#include "claim/house_sums.h"
#include "claim/row_solver.h"
#include "exact/full_grid.h"

namespace cp {

// Limits as counts, so that the same question has the same answer everywhere.
struct SearchLimits {
  std::uint64_t failures = 200'000;        // of one question; beyond: no answer
  std::uint64_t shrink_failures = 60'000;  // of all questions of one deletion together; beyond, a fact that might go stays
  std::uint64_t smaller_work = 400'000;    // steps of propagation spent on looking for a smaller reason
};

// A digit for every cell, as a model has them; houses may be broken.
using Assignment = FullGrid;

class FactSearch {
 public:
  // `denied` is what the facts shall refute. The rule that a cell holds exactly one digit is always part of it.
  FactSearch(const Shape& shape, std::vector<CertificateFact> facts, const Formula& denied);

  using End = RowSolver::End;

  // Can all these facts (by number) and the denied formula hold, with some literals besides?
  End solve(const std::vector<int>& facts, std::uint64_t& failures, const std::vector<Lit>& also = {});
  // After kMet.
  [[nodiscard]] Assignment assignment() const;
  // After kImpossible: facts that are enough; ordered.
  [[nodiscard]] const std::vector<int>& core() const { return core_; }
  // Adds a sum that must hold from now on.
  void require(const Row& row) { solver_->add(row, 0); }

  [[nodiscard]] const std::vector<CertificateFact>& facts() const { return facts_; }
  // The sums of houses in use that these facts (ordered) give, numbered by their places among them, options as
  // they are numbered when there are no other facts.
  [[nodiscard]] std::vector<HouseSum> sums_within(const std::vector<int>& facts) const;
  // Which facts does the last assignment meet?
  [[nodiscard]] std::vector<int> met_facts() const;
  [[nodiscard]] std::uint64_t work() const { return solver_->work(); }

 private:
  void add_sums(const std::vector<Row>& denial);
  [[nodiscard]] bool is_met(const Row& row) const;

  const Shape& shape_;
  std::vector<CertificateFact> facts_;
  std::vector<std::vector<Row>> rows_;  // of each fact
  std::vector<int> selectors_;
  std::vector<HouseSum> sums_;
  std::vector<int> options_;  // of each fact: how many
  std::unique_ptr<RowSolver> solver_;
  std::vector<int> core_;
};

struct FoundReason {
  std::vector<int> facts;         // ordered
  bool is_irreducible = true;     // none of them can be left out; false only when a limit was reached
  bool is_smallest = false;       // no set of fewer facts would do
};

// A set of more facts is not made smaller by a search from below: a smallest one is out of reach, and nobody would say it.
inline constexpr std::size_t kLargestToImprove = 14;

// Shrinks a set of facts known to be enough. `among`: the facts that may be used instead.
// Precondition: solve(enough) says kImpossible.
FoundReason shrink(FactSearch& search, std::vector<int> enough, const std::vector<int>& among, const SearchLimits& limits);

}  // namespace cp
