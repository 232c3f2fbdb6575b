// SPDX-License-Identifier: Apache-2.0
// Verdicts, their reasons, what is missing, and the checker that must not be fooled. The comparison with CaDiCaL is claim_audit.
#include "claim/verdict.h"

#include <gtest/gtest.h>

#include "claim/certificate_text.h"
#include "claim/linear_form.h"
#include "support/claim_states.h"
#include "support/data_rows.h"
#include "verify/certificate_check.h"

namespace cp {
namespace {

const Shape& nine() { return standard_shape(); }

Ground rules() { return {true, Footing::all_rules(nine()).houses, {}, {}}; }

Claim claim_of(const Position& position, const std::string& text) {
  const auto claim = parse_claim(position, {}, text);
  EXPECT_TRUE(claim.is_ok()) << text;
  return *claim;
}

ClaimAnswer judged(const Position& position, const std::string& text, const Ground& ground) {
  const auto board = judge_board(position);
  EXPECT_TRUE(board.is_ok());
  const auto answer = judge_claim(*board, claim_of(position, text), ground);
  EXPECT_TRUE(answer.is_ok());
  return *answer;
}

TEST(Verdict, TheRingTheoremIsASumOfHouses) {
  const Position empty(nine());
  const auto weights = parse_balance(nine(), "c1,c2,c8,c9 : r3,r7,b4,b6");
  ASSERT_TRUE(weights.is_ok());
  Vocabulary vocabulary;
  vocabulary.balances.push_back({"ring", *weights});
  const auto claim = parse_claim(empty, vocabulary, "{ring.left} = {ring.right}");
  ASSERT_TRUE(claim.is_ok());
  const auto board = judge_board(empty);
  ASSERT_TRUE(board.is_ok());
  const auto answer = judge_claim(*board, *claim, rules());
  ASSERT_TRUE(answer.is_ok());
  EXPECT_EQ(answer->verdict, Verdict::kProved);
  ASSERT_TRUE(answer->certificate);
  // Four columns against two rows and two boxes, and no fewer.
  EXPECT_EQ(answer->certificate->facts.size(), 8U);
  EXPECT_EQ(answer->certificate->proof.front().rows.size(), answer->certificate->facts.size() + 1);
  EXPECT_TRUE(answer->is_irreducible);
  EXPECT_TRUE(check_certificate(nine(), *answer->certificate).holds);
}

TEST(Verdict, WhatAHouseAloneImplies) {
  const Ground row{true, {House(0)}, {}, {}};
  const Position empty(nine());
  EXPECT_EQ(judged(empty, "if r1c1 = 5 then r1c2 != 5", row).verdict, Verdict::kProved);
  EXPECT_EQ(judged(empty, "r1 hold 1,2,3,4,5,6,7,8,9", row).verdict, Verdict::kProved);
  EXPECT_EQ(judged(empty, "r2 hold 1,2,3,4,5,6,7,8,9", row).verdict, Verdict::kOpen);
  EXPECT_EQ(judged(empty, "r1c1 = 5 and r1c2 = 5", row).verdict, Verdict::kRefuted);
}

TEST(Verdict, AnOpenClaimSaysWhatIsMissing) {
  const ClaimAnswer answer = judged(Position(nine()), "if r1c1 = 5 then r2c2 != 5", {true, {House(0)}, {}, {}});
  EXPECT_EQ(answer.verdict, Verdict::kOpen);
  ASSERT_EQ(answer.additions.size(), 1U);
  ASSERT_EQ(answer.additions[0].facts.size(), 1U);
  EXPECT_EQ(answer.additions[0].facts[0].house, House(18));
  const std::vector<Candidate> both = {{Cell(0), Digit(4)}, {Cell(10), Digit(4)}};
  EXPECT_EQ(answer.counter, both);
}

TEST(Verdict, AWrongMarkIsNotTrusted) {
  Position position = support::read(support::published_puzzle("gecode0"));
  const auto truth = judge_board(position)->truth;
  ASSERT_TRUE(truth);
  const Cell cell = position.open().first();
  position.eliminate({cell, truth->at(cell)});
  const auto board = judge_board(position);
  ASSERT_TRUE(board.is_ok());
  EXPECT_EQ(board->wrong_marks, CellSet::of(cell));
  EXPECT_TRUE(board->position.has({cell, truth->at(cell)}));
}

// A refuted claim never shows the digits of the solution for all the cells it speaks about.
TEST(Verdict, TheSolutionIsNotGivenAway) {
  int refuted = 0;
  for (std::uint64_t seed = 1; seed < 80; ++seed) {
    const support::ClaimState state(*find_shape("4x4"), seed);
    const auto board = judge_board(state.position);
    ASSERT_TRUE(board.is_ok());
    if (!board->truth) continue;
    support::RandomSayings sayings(state.position.shape(), support::digits_of(state.solution), seed);
    for (int i = 0; i < 10; ++i) {
      const Claim claim = claim_of(state.position, oracle::text_of(sayings.make(), 4));
      const auto answer = judge_claim(*board, claim, state.ground);
      ASSERT_TRUE(answer.is_ok());
      if (answer->verdict != Verdict::kRefuted || answer->counter.empty()) continue;
      ++refuted;
      EXPECT_TRUE(std::any_of(answer->counter.begin(), answer->counter.end(), [&](const Candidate& each) { return !board->truth->has(each); }));
    }
  }
  EXPECT_GT(refuted, 5);
}

// Every fact of a reason is needed: without it the denial can hold.
TEST(Verdict, ReasonsAreIrreducible) {
  int reasons = 0;
  for (std::uint64_t seed = 30; seed < 50; ++seed) {
    const support::ClaimState state(*find_shape("6x6"), seed);
    const auto board = judge_board(state.position);
    ASSERT_TRUE(board.is_ok());
    support::RandomSayings sayings(state.position.shape(), support::digits_of(state.solution), seed);
    for (int i = 0; i < 6; ++i) {
      const auto answer = judge_claim(*board, claim_of(state.position, oracle::text_of(sayings.make(), 6)), state.ground);
      ASSERT_TRUE(answer.is_ok());
      if (answer->verdict != Verdict::kProved) continue;
      ++reasons;
      for (std::size_t left_out = 0; left_out < answer->certificate->facts.size(); ++left_out) {
        std::vector<CertificateFact> facts = answer->certificate->facts;
        facts.erase(facts.begin() + static_cast<std::ptrdiff_t>(left_out));
        EXPECT_FALSE(write_certificate(state.position.shape(), facts, answer->certificate->denial));
      }
    }
  }
  EXPECT_GT(reasons, 25);
}

// What is bent in a certificate is refused, or what is left is still right: then fewer facts were needed there.
TEST(CertificateCheck, RefusesWhatDoesNotFollow) {
  int refused = 0;
  int bent = 0;
  Rng rng(3);
  for (std::uint64_t seed = 60; seed < 80; ++seed) {
    const support::ClaimState state(*find_shape("6x6"), seed);
    const auto board = judge_board(state.position);
    ASSERT_TRUE(board.is_ok());
    support::RandomSayings sayings(state.position.shape(), support::digits_of(state.solution), seed);
    const auto answer = judge_claim(*board, claim_of(state.position, oracle::text_of(sayings.make(), 6)), state.ground);
    ASSERT_TRUE(answer.is_ok());
    if (!answer->certificate || answer->certificate->facts.empty()) continue;
    // Irreducible: with a fact fewer the denial can hold, so no proof from the others may be accepted.
    for (std::size_t i = 0; i < answer->certificate->facts.size(); ++i) {
      Certificate wrong = *answer->certificate;
      if (wrong.facts[i].kind == CertificateFact::Kind::kMarks) wrong.facts[i].digits = state.position.shape().digits();
      else if (wrong.facts[i].kind == CertificateFact::Kind::kClaim) wrong.facts[i].formula = {};
      else continue;
      ++bent;
      refused += check_certificate(state.position.shape(), wrong).holds ? 0 : 1;
    }
    Certificate cut = *answer->certificate;
    cut.proof.pop_back();
    EXPECT_FALSE(check_certificate(state.position.shape(), cut).holds);
  }
  EXPECT_GT(bent, 20);
  EXPECT_EQ(refused, bent);
}

TEST(CertificateCheck, RefusesMarksThatAreNotThere) {
  Position position(nine());
  position.eliminate({Cell(0), Digit(0)});
  Certificate certificate;
  CertificateFact marks;
  marks.kind = CertificateFact::Kind::kMarks;
  marks.digits = nine().digits() - DigitSet::of(Digit(0));
  certificate.facts = {marks};
  EXPECT_TRUE(check_marks(position, certificate).holds);
  certificate.facts[0].digits.remove(Digit(1));
  EXPECT_FALSE(check_marks(position, certificate).holds);
}

// Formula and denial: every full grid meets exactly one of the two.
TEST(LinearForm, AClaimAndItsDenialExcludeEachOther) {
  const Shape& shape = *find_shape("4x4");
  for (std::uint64_t seed = 1; seed < 120; ++seed) {
    const FullGrid grid = random_grid(shape, seed);
    support::RandomSayings sayings(shape, support::digits_of(random_grid(shape, seed + 1)), seed);
    const Claim claim = claim_of(Position(shape), oracle::text_of(sayings.make(), 4));
    std::vector<CertificateFact> cells;
    for (const Cell cell : shape.all_cells()) {
      CertificateFact fact;
      fact.kind = CertificateFact::Kind::kMarks;
      fact.cell = cell;
      fact.digits = DigitSet::of(grid.at(cell));
      cells.push_back(fact);
    }
    EXPECT_NE(write_certificate(shape, cells, formula_of(shape, claim, true)).has_value(), write_certificate(shape, cells, formula_of(shape, claim, false)).has_value());
    EXPECT_EQ(write_certificate(shape, cells, formula_of(shape, claim, false)).has_value(), holds_in(claim, grid));
  }
}

}  // namespace
}  // namespace cp
