// SPDX-License-Identifier: Apache-2.0
// Sums over yes-or-no variables, and what they force: assignments in the order they were made, each with the sum it
// follows from. The search (row_solver.h) and the writer of proofs (proof_writer.h) are both built on it.
#pragma once

#include <cstdint>
#include <vector>

#include "step/certificate.h"

namespace cp {

// A literal as a number: 2 * variable, plus 1 when it says "no".
using Lit = int;
constexpr Lit lit_of(int variable, bool is_true) { return 2 * variable + (is_true ? 0 : 1); }
constexpr Lit opposite(Lit lit) { return lit ^ 1; }
constexpr int variable_of(Lit lit) { return lit >> 1; }
constexpr bool is_true(Lit lit) { return (lit & 1) == 0; }
inline Lit lit_of(const Literal& literal) { return lit_of(literal.variable, literal.is_true); }
inline Literal literal_of(Lit lit) { return {variable_of(lit), is_true(lit)}; }

class RowTrail {
 public:
  static constexpr int kNoRow = -1;

  explicit RowTrail(int variables);

  [[nodiscard]] int variables() const { return static_cast<int>(reason_.size()); }

  // Adds a sum, "at least" only; an exact row is added as two. With guards it counts only while all of these variables
  // are true. `tag` is for the caller. Precondition: everything propagated (what the new row forces comes with the next propagate()).
  void add(const Row& row, int tag, const std::vector<int>& guards = {});
  // At least one of the literals; the first is made true as soon as the others are false, so it should be the one that is
  // open when they are. Precondition: as for add(), and no literal but the first is open, or all are.
  void add_clause(const std::vector<Lit>& clause, int tag);

  [[nodiscard]] std::size_t clause_count() const { return clauses_.size(); }
  // Forgets the clauses that are not kept. Precondition: nothing is supposed, everything is propagated; what follows from the
  // forgotten ones stays known, but is not explained any more.
  void keep_clauses(const std::vector<char>& is_kept);

  // 1 true, -1 false, 0 open.
  [[nodiscard]] int value(Lit lit) const { return values_[static_cast<std::size_t>(lit)]; }
  // Makes an open literal true because of the row (kNoRow: it is supposed).
  void assign(Lit lit, int row);
  // Goes on until nothing is forced any more. The number of a row that cannot be met any more, or kNoRow.
  int propagate();
  // Takes assignments back until so many are left.
  void undo_to(std::size_t size);

  [[nodiscard]] const std::vector<Lit>& trail() const { return trail_; }
  [[nodiscard]] int reason(int variable) const { return reason_[static_cast<std::size_t>(variable)]; }
  [[nodiscard]] int place(int variable) const { return place_[static_cast<std::size_t>(variable)]; }
  [[nodiscard]] int tag(int row) const { return row >= kFirstClause ? clauses_[static_cast<std::size_t>(row - kFirstClause)].tag : rows_[static_cast<std::size_t>(row)].tag; }

  // Literals, all true, that together make the row force `forced` (or break it, with forced = -1). All of them
  // became true before `forced` did. As few as a greedy choice gives.
  void explain(int row, Lit forced, std::vector<Lit>& because) const;

  [[nodiscard]] std::uint64_t work() const { return work_; }

 private:
  static constexpr int kFirstClause = 1 << 28;  // rows from here on are clauses

  struct Term {
    Lit lit;
    int factor;  // > 0
  };
  struct PlainRow {
    std::vector<Term> terms;  // guards, then the largest factor first
    int guards = 0;
    int need = 0;
    int tag = 0;
  };
  // What is looked at all the time, apart from the rest.
  struct Gauge {
    int slack = 0;         // sum of the factors of terms not known to be false, minus need
    int largest = 0;       // factor among those that are no guards
    int guard_factor = 0;  // 0: there is none
  };
  struct Occurrence {
    int row;
    int factor;
  };
  // The first two literals are watched: while neither is false, the clause asks for nothing.
  struct Clause {
    std::vector<Lit> lits;
    int tag = 0;
  };

  // `other` is a literal of the clause: when it is true, the clause need not be looked at.
  struct Watch {
    int clause;
    Lit other;
  };

  void add_plain(PlainRow row);
  void watch(int clause);
  // Assigns what the row forces; false when it cannot be met.
  bool look_at(int row);
  [[nodiscard]] bool needs_a_look(int row) const;
  // The literal became false. The clause that cannot be met any more, or kNoRow.
  int look_at_clauses(Lit lit);

  std::vector<PlainRow> rows_;
  std::vector<Gauge> gauges_;
  std::vector<Clause> clauses_;
  std::vector<std::vector<Watch>> watchers_;        // by literal
  std::vector<std::vector<Occurrence>> rows_with_;  // by literal
  std::vector<std::int8_t> values_;                 // by literal
  std::vector<int> reason_;                         // by variable
  std::vector<int> place_;                          // by variable: place in the trail
  std::vector<Lit> trail_;
  std::vector<int> fresh_;                          // rows not looked at yet
  std::size_t done_ = 0;                            // trail literals whose rows know of them
  std::uint64_t work_ = 0;
};

}  // namespace cp
