// SPDX-License-Identifier: Apache-2.0
// What stands in a certificate, in a few words each: literals, rows, facts, and what cannot be.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "grid/shape.h"
#include "step/certificate.h"

namespace cp {

// "row 3", "the marks of r3c4 (5 or 6)", "the 5 in r3c4", "balance ring", "claim 2".
std::string fact_in_words(const Shape& shape, const CertificateFact& fact);
// All of them, each kind together: "rows 3 and 4, the 5 in r3c4, the marks of r1c1 and r1c2".
std::string facts_in_words(const Shape& shape, const std::vector<CertificateFact>& facts);

class CertificateTerms {
 public:
  using Known = std::map<int, bool>;  // by variable

  CertificateTerms(const Shape& shape, const Certificate& certificate);

  [[nodiscard]] bool is_candidate(int variable) const { return variable < candidates_; }
  // Precondition: is_candidate.
  [[nodiscard]] Candidate candidate_of(int variable) const { return {Cell(variable / shape_.side()), Digit(variable % shape_.side())}; }

  // Is it said by a fact that names the digit of a cell?
  [[nodiscard]] bool is_given(const Literal& literal) const { return literal.is_true && given_.contains(literal.variable); }
  // The row names a digit: of a house, of a balance, of a sum.
  [[nodiscard]] Digit digit_of(const std::vector<RowUse>& rows) const { return Digit(rows.back().row.row); }
  // "columns 1 and 2 against those of rows 3 and 7": a sum of rows of facts.
  [[nodiscard]] std::string sum_words(const std::vector<RowUse>& rows) const;

  // "r3c4 is 5", "r3c4 is not 5"; of an option what it stands for: "there are too many 5s".
  [[nodiscard]] std::string literal_words(const Literal& literal) const;
  [[nodiscard]] std::string literals_words(const std::vector<Literal>& literals) const;
  // What the rows are about: "row 3", "balance ring for 5".
  [[nodiscard]] std::string rows_words(const std::vector<RowUse>& rows) const;
  // What cannot be: "row 3 has no place left for 5". `known` is what is known at that point.
  [[nodiscard]] std::string clash_words(const ProofItem& item, const Known& known) const;
  // Each kind of fact named while it is short, counted otherwise.
  [[nodiscard]] std::string short_facts() const;

  [[nodiscard]] bool is_cell(const std::vector<RowUse>& rows) const;
  [[nodiscard]] bool is_house(const std::vector<RowUse>& rows) const;
  [[nodiscard]] bool is_marks(const std::vector<RowUse>& rows) const;
  // The open variables of the row of a split, as the checker finds them; empty when they have no name.
  [[nodiscard]] std::vector<int> cases_of(const ProofItem& item, const Known& known) const;

 private:
  [[nodiscard]] const CertificateFact& fact_of(const RowName& name) const { return certificate_.facts[static_cast<std::size_t>(name.index)]; }
  [[nodiscard]] bool is_fact(const std::vector<RowUse>& rows, CertificateFact::Kind kind) const;
  [[nodiscard]] std::string row_words(const RowName& name) const;
  // Gives the options of a formula their words, and its rows their variables, in the order of step/certificate.h.
  void name_options(const Formula& formula, bool is_guarded, std::vector<std::vector<int>>& rows);
  // Empty when it takes too many.
  [[nodiscard]] std::string formula_words(const Formula& formula) const;
  [[nodiscard]] std::string row_meaning(const Row& row) const;
  [[nodiscard]] bool is_known_true(Cell cell, Digit digit, const Known& known) const;
  [[nodiscard]] int trues_of_cell(Cell cell, const Known& known) const;

  const Shape& shape_;
  const Certificate& certificate_;
  int candidates_;
  std::vector<std::string> options_;
  std::vector<std::vector<std::vector<int>>> fact_rows_;  // of claims: the variables of each row; empty for other facts
  std::vector<std::vector<int>> denial_rows_;
  std::map<int, bool> given_;                             // candidates that single marks say
};

}  // namespace cp
