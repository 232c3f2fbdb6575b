// SPDX-License-Identifier: Apache-2.0
// The proof of a claim, in a form that a checker replays without knowing how it was found. docs/formats/certificate.md
// explains it with examples; docs/adr/0009-claims.md says why it looks like this.
//
// Everything is about yes-or-no variables: the candidates (is this digit in this cell?), numbered cell * side + digit,
// and behind them the options of the formulas, in the order in which verify and claim number them (see Formula).
#pragma once

#include <string>
#include <vector>

#include "step/balance_reason.h"
#include "step/constraint.h"

namespace cp {

// A sum over variables: factors times true variables, at least `least`, or exactly that.
struct RowTerm {
  int variable = 0;
  int factor = 0;

  friend constexpr bool operator==(const RowTerm&, const RowTerm&) = default;
};
struct Row {
  std::vector<RowTerm> terms;  // no variable twice
  int least = 0;
  bool is_exact = false;

  friend bool operator==(const Row&, const Row&) = default;
};

// What a claim says or denies: a sum, all of some formulas, or any of them.
// To be used as rows it is flattened: the sums of an `all` one after the other; an `any` takes one option for each part,
// numbered on from the last, first says that some option is true, then gives its parts in order, each under its
// option. A sum under an option holds when the option is true (an exact one is split: at least, then at most).
struct Formula {
  enum class Kind { kRow, kAll, kAny };

  Kind kind = Kind::kAll;  // an `all` without parts holds always, an `any` without parts never
  Row row;                 // for kRow
  std::vector<Formula> parts;
};

// A fact of the footing that a proof uses. The checker makes the rows of all kinds but kClaim by itself.
struct CertificateFact {
  enum class Kind {
    kHouse,    // rows: for each digit, exactly one place in the house
    kMarks,    // one row: no digit but these in the cell
    kBalance,  // rows: for each digit, the weighed sum of its places is the surplus
    kClaim,    // the rows of its formula
  };

  Kind kind = Kind::kHouse;
  House house;
  Cell cell;
  DigitSet digits;
  std::vector<Weight> weights;
  std::string name;  // of the balance, or the number of the claim
  Formula formula;
};

// Which row: of a fact, of the denied claim, of the rule that a cell holds exactly one digit, or of a lemma.
struct RowName {
  enum class Source { kCell, kFact, kDenial, kLemma };

  Source source = Source::kCell;
  int index = 0;  // cell, number of the fact, or number of the lemma
  int row = 0;    // which row of the fact or of the denial

  friend constexpr auto operator<=>(const RowName&, const RowName&) = default;
};
struct RowUse {
  RowName row;
  int multiplier = 1;  // below 0 only for exact rows
};

struct Literal {
  int variable = 0;
  bool is_true = true;

  friend constexpr auto operator<=>(const Literal&, const Literal&) = default;
};

// A part of a proof, judged on what is known at that point. A proof ends in a clash, or in a split all of whose cases do.
struct ProofItem {
  enum class Kind {
    kUse,    // the sum of the rows forces each of the literals (a unit step)
    kClash,  // the sum of the rows cannot be
    kLemma,  // the literals, supposed together, lead to a clash: not all of them hold. Lemmas are numbered in the order of their ends
    kSplit,  // a row of which at least one variable must be true: a case for each variable still open, in its order
  };

  Kind kind = Kind::kUse;
  std::vector<RowUse> rows;            // kUse, kClash, kSplit (one row)
  std::vector<Literal> literals;       // kUse: forced; kLemma: supposed
  std::vector<std::vector<ProofItem>> proofs;  // kLemma: one; kSplit: one for each case
};

// The facts and the denial of the claim together are impossible.
struct Certificate {
  std::vector<CertificateFact> facts;
  Formula denial;
  std::vector<ProofItem> proof;
};

}  // namespace cp
