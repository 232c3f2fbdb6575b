// SPDX-License-Identifier: Apache-2.0
// The rows of a proof, with their names, on a trail; and how a stretch of the trail is written down backwards from what it was needed
// for. What is not needed is not written.
#pragma once

#include <vector>

#include "claim/house_sums.h"
#include "claim/row_solver.h"

namespace cp {

// The rows of a question: what each is called in a certificate.
struct NamedRows {
  struct Entry {
    Row row;
    std::vector<RowUse> uses;
    bool can_split = false;   // the row alone may be split into cases
    bool is_central = false;  // a cell that the denial speaks about: it may be split into many
  };
  std::vector<Entry> entries;
  int variables = 0;
};
// `sums`: sums of houses that were found before, perhaps with more facts in view; those that these facts give are added.
NamedRows named_rows(const Shape& shape, const std::vector<CertificateFact>& facts, const Formula& denial, std::vector<HouseSum> sums = {});

// A written stretch and what it rests on: literals known before it, and lemmas.
struct Traced {
  std::vector<ProofItem> items;
  std::vector<char> needed;  // by variable
  std::vector<int> lemmas;   // numbers in the order of their finding; may repeat

  void merge(const Traced& other);
};

class ProofTrace {
 public:
  explicit ProofTrace(const NamedRows& rows);

  RowTrail trail;

  // A lemma as a row: not all of the literals.
  void add_lemma(const std::vector<Lit>& supposed);
  [[nodiscard]] int lemma_count() const { return lemmas_; }

  // The clash of a row, and the stretch of the trail from `start` on that it needs.
  [[nodiscard]] Traced clash(int row, std::size_t start) const;
  // Writes the stretch before what is traced already, as far as that needs it.
  void precede(Traced& traced, std::size_t start, std::size_t end) const;
  // The unit step that made one literal of the trail true; marks what it needs.
  void unit_step(Traced& traced, Lit lit) const;
  [[nodiscard]] const NamedRows& rows() const { return rows_; }

 private:
  [[nodiscard]] std::vector<RowUse> uses_of(int row) const;
  void need(Traced& traced, int row, Lit forced) const;

  const NamedRows& rows_;
  int lemmas_ = 0;
};

}  // namespace cp
