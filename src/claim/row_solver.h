// SPDX-License-Identifier: Apache-2.0
// Can these sums be met? A small search that learns from its failures (clause learning as in J. Marques-Silva and
// K. Sakallah, "GRASP", 1996; sums instead of clauses as in pseudo-Boolean solvers; learned rows are clauses).
// Deterministic: no clock, no chance; limits count failures.
#pragma once

#include <optional>

#include "claim/row_trail.h"

namespace cp {

class RowSolver {
 public:
  explicit RowSolver(int variables);

  enum class End { kMet, kImpossible, kLimit };

  void add(const Row& row, int tag, const std::vector<int>& guards = {}) { trail_.add(row, tag, guards); }
  // Prefers this variable among those without a history; the larger, the earlier.
  void prefer(int variable, std::uint64_t weight) { activity_[static_cast<std::size_t>(variable)] = weight; }

  // A variable that nothing asks for: it stays open unless it is forced.
  void leave_open(int variable) { is_left_open_[static_cast<std::size_t>(variable)] = 1; }

  // With all these literals true? `failures` is what may be spent; it counts down.
  End solve(const std::vector<Lit>& assumptions, std::uint64_t& failures);

  // After kMet: is the variable true? (Open ones are not.)
  [[nodiscard]] bool is_true_in_model(int variable) const { return model_[static_cast<std::size_t>(variable)]; }
  // After kImpossible: assumptions that cannot all be true. Not always the fewest.
  [[nodiscard]] const std::vector<Lit>& core() const { return core_; }
  // Everything learned so far, in order: each clause follows from the rows and the clauses before by unit steps.
  [[nodiscard]] const std::vector<std::vector<Lit>>& learned() const { return learned_; }
  [[nodiscard]] std::uint64_t work() const { return trail_.work(); }

 private:
  [[nodiscard]] int level_of(Lit lit) const;
  // Brings levels_ up to date with the trail.
  void note_levels();
  bool decide(const std::vector<Lit>& assumptions);
  // Learns from a broken row and goes back; false when nothing is left to take back.
  bool learn(int row);
  void drop_implied(std::vector<Lit>& clause);
  void take_core(Lit failed);
  void bump(int variable);
  void keep_model();
  [[nodiscard]] int best_open_variable() const;
  void back_to_level(std::size_t level);
  // Forgets half of what was learned, the clauses that tie many decisions together first. Only between restarts.
  void forget();

  RowTrail trail_;
  std::vector<std::size_t> level_starts_;
  std::vector<int> levels_;  // by place in the trail, as far as note_levels() went
  std::vector<std::uint64_t> activity_;
  std::vector<char> phase_;
  std::vector<char> seen_;
  std::vector<char> is_left_open_;
  bool is_broken_ = false;  // impossible without any assumption
  std::uint64_t increment_ = 1 << 10;
  std::vector<Lit> core_;
  std::vector<char> model_;
  std::vector<std::vector<Lit>> learned_;
  std::vector<int> spread_;        // of each clause still kept: how many decisions it ties together
  std::size_t most_clauses_ = 1500;
};

}  // namespace cp
