// SPDX-License-Identifier: Apache-2.0
// Proved, refuted or open: the answer to a claim on its footing.
#pragma once

#include <optional>

#include "claim/claim_parser.h"
#include "claim/fact_search.h"
#include "claim/proof_writer.h"

namespace cp {

// What is known about the puzzle itself, worked out once for all its claims.
struct Board {
  Position position;              // as claims may rest on it: wrong marks put back
  CellSet wrong_marks;            // cells whose marks leave out their true digit, or whose placed digit is wrong
  std::optional<FullGrid> truth;  // the solution, when there is exactly one
};

// The givens decide when they have exactly one solution; the position as it stands otherwise.
// Error kNotProper: there is no solution; kLimit: that could not be settled.
Result<Board> judge_board(const Position& position);

// An earlier claim as a fact.
struct EarlierClaim {
  int number = 0;
  Claim claim;
};

// The footing with all names resolved.
struct Ground {
  bool has_marks = true;
  std::vector<House> houses;
  std::vector<NamedBalance> balances;
  std::vector<EarlierClaim> claims;
};
// What might be added to it besides houses and marks.
struct Spare {
  std::vector<NamedBalance> balances;
  std::vector<EarlierClaim> claims;
};

enum class Verdict { kProved, kRefuted, kOpen };

// Something that would close an open claim: facts, or a candidate to strike out.
struct Addition {
  std::vector<CertificateFact> facts;
  std::optional<Candidate> elimination;
};

struct ClaimAnswer {
  Verdict verdict = Verdict::kOpen;
  // Proved: why. Refuted: why the claim cannot be, when the footing shows it.
  std::optional<Certificate> certificate;
  bool is_irreducible = false;  // of the facts of the certificate
  bool is_smallest = false;
  bool is_contradiction = false;  // the footing alone is impossible: it proves everything
  // Open: digits of the cells under discussion that go with the footing and break the claim. Refuted: the same when there
  // are some other than the true ones.
  std::vector<Candidate> counter;
  std::optional<FullGrid> counter_grid;  // a digit for every cell behind it; rules outside the footing may be broken
  std::vector<Addition> additions;       // open: the cheapest, several when equally cheap
  std::uint64_t work = 0;
};

// Error kLimit when the search gave up.
Result<ClaimAnswer> judge_claim(const Board& board, const Claim& claim, const Ground& ground, const Spare& spare = {}, const SearchLimits& limits = {});

}  // namespace cp
