// SPDX-License-Identifier: Apache-2.0
#include "claim/verdict.h"

#include <algorithm>
#include <cassert>
#include <numeric>

#include "base/text.h"
#include "claim/additions.h"
#include "claim/linear_form.h"
#include "exact/minimal.h"

namespace cp {

namespace {

using End = FactSearch::End;

constexpr std::uint64_t kMostNodes = 2'000'000;
constexpr SearchLimits kLimitsOnFew{500, 1'500, 20'000};  // when a sum does it, it does it at once

Error gave_up() { return Error{ErrorCode::kLimit, "the search gave up on this claim", "name fewer cells, or add to the footing", {}}; }

std::vector<int> all_of_them(std::size_t count) {
  std::vector<int> numbers(count);
  std::iota(numbers.begin(), numbers.end(), 0);
  return numbers;
}

// Takes back what the solution contradicts.
Position repaired(const Position& position, const FullGrid& truth, CellSet& wrong) {
  const Shape& shape = position.shape();
  for (const Cell cell : shape.all_cells()) {
    if (!position.candidates(cell).has(truth.at(cell))) wrong.add(cell);
  }
  if (wrong.is_empty()) return position;
  Position clean(shape);
  for (const Cell cell : position.givens()) clean.place_given(cell, *position.digit_at(cell));
  for (const Cell cell : position.placed() - position.givens() - wrong) clean.place(cell, *position.digit_at(cell));
  for (const Cell cell : clean.open() - wrong) {
    for (const Digit digit : clean.candidates(cell) - position.candidates(cell)) clean.eliminate({cell, digit});
  }
  return clean;
}

class Judge {
 public:
  Judge(const Board& board, const Claim& claim, const Ground& ground, const Spare& spare, const SearchLimits& limits)
      : board_(board), shape_(board.position.shape()), claim_(claim), ground_(ground), spare_(spare), limits_(limits), facts_(facts_of(board.position, ground)) {}

  Result<ClaimAnswer> run() {
    if (follows_from_few()) return std::move(answer_);
    FactSearch search(shape_, facts_, formula_of(shape_, claim_, false));
    const auto all = all_of_them(facts_.size());
    std::uint64_t failures = limits_.failures;
    const End end = search.solve(all, failures);
    const bool is_false = board_.truth && !holds_in(claim_, *board_.truth);
    if (end == End::kLimit && !is_false) return first_or_none();
    if (end == End::kImpossible) {
      if (is_false) answer_.is_contradiction = true;
      if (!explain(search, all, formula_of(shape_, claim_, false), limits_)) return first_or_none();
      answer_.is_contradiction = answer_.is_contradiction || is_impossible_ground();
    }
    answer_.verdict = end == End::kImpossible ? Verdict::kProved : Verdict::kOpen;
    if (is_false) {
      answer_.verdict = Verdict::kRefuted;
      if (end != End::kImpossible) refute(search, all, end);
    } else if (end == End::kMet) {
      if (!board_.truth && is_denied(all)) answer_.verdict = Verdict::kRefuted;
      else if (!close(search, all)) return gave_up();
      else keep_counter(search.assignment());
    }
    answer_.work += search.work();
    return std::move(answer_);
  }

 private:
  // What a balance says rests on the balance alone, or on it and the digits known in its remainders and in the cells of the claim.
  // These two are tried before everything on the board: the sums of the balance then use no digit that they do not need.
  bool follows_from_few() {
    if (ground_.balances.empty() || (board_.truth && !holds_in(claim_, *board_.truth))) return false;
    CellSet near = mentioned(claim_);
    for (const NamedBalance& balance : ground_.balances) {
      for (const RowTerm& term : weighed_row(shape_, balance.weights, Digit(0)).terms) near.add(Cell(term.variable / shape_.side()));
    }
    return follows_with({}) || follows_with(near);
  }

  // `known`: the cells whose digits may be used. True when that is enough, and the reason is one that no smaller one can beat, or
  // too long for the search for a smallest one.
  bool follows_with(const CellSet& known) {
    std::vector<CertificateFact> few;
    for (const CertificateFact& fact : facts_) {
      if (fact.kind != CertificateFact::Kind::kMarks || (fact.digits.size() == 1 && known.has(fact.cell))) few.push_back(fact);
    }
    const Formula denied = formula_of(shape_, claim_, false);
    FactSearch search(shape_, few, denied);
    std::uint64_t failures = kLimitsOnFew.failures;
    const bool is_enough = search.solve(all_of_them(few.size()), failures) == End::kImpossible && explain(search, all_of_them(few.size()), denied, kLimitsOnFew);
    answer_.work += search.work();
    if (!is_enough) return false;
    const std::size_t size = answer_.certificate->facts.size();
    answer_.is_smallest = size <= 1;
    answer_.is_contradiction = is_impossible_ground();
    answer_.verdict = Verdict::kProved;
    if (size <= 1 || size > kLargestToImprove) return true;
    const std::uint64_t work = answer_.work;
    if (!first_) first_ = std::move(answer_);
    answer_ = {};
    answer_.work = work;
    return false;
  }

  // Everything on the board is too much for the search: a reason found with few of the facts stands.
  Result<ClaimAnswer> first_or_none() {
    if (!first_) return gave_up();
    return std::move(*first_);
  }

  // The reason for a question that ended impossible.
  bool explain(FactSearch& search, const std::vector<int>& among, const Formula& denied, const SearchLimits& limits) {
    const std::vector<int> enough = search.core();
    FoundReason reason = shrink(search, enough, among, limits);
    answer_.certificate = written(search, reason.facts, denied);
    if (!answer_.certificate) {
      // Fewer facts, but a proof out of reach: then the first ones.
      reason = {enough, false, false};
      answer_.certificate = written(search, enough, denied);
    }
    answer_.is_irreducible = reason.is_irreducible;
    answer_.is_smallest = reason.is_smallest;
    return answer_.certificate.has_value();
  }

  [[nodiscard]] std::optional<Certificate> written(const FactSearch& search, const std::vector<int>& facts, const Formula& denied) const {
    std::vector<CertificateFact> used;
    for (const int fact : facts) used.push_back(search.facts()[static_cast<std::size_t>(fact)]);
    return write_certificate(shape_, std::move(used), denied, search.sums_within(facts));
  }

  // Only earlier claims can make a footing impossible, and marks of a puzzle without a single solution.
  bool is_impossible_ground() {
    if (ground_.claims.empty() && board_.truth) return false;
    FactSearch alone(shape_, facts_, Formula{});
    std::uint64_t failures = limits_.failures;
    return alone.solve(all_of_them(facts_.size()), failures) == End::kImpossible;
  }

  // Is the claim itself impossible on this footing? Then that is the reason to show.
  bool is_denied(const std::vector<int>& all) {
    const Formula claimed = formula_of(shape_, claim_, true);
    FactSearch search(shape_, facts_, claimed);
    std::uint64_t failures = limits_.failures;
    if (search.solve(all, failures) != End::kImpossible) return false;
    answer_.work += search.work();
    return explain(search, all, claimed, limits_);
  }

  // The solution breaks the claim. Show a clash, or digits other than the true ones that break it, too.
  void refute(FactSearch& search, const std::vector<int>& all, End end) {
    if (end == End::kMet) {
      const CellSet cells = mentioned(claim_);
      Row not_true{{}, 1 - cells.size(), false};
      for (const Cell cell : cells) not_true.terms.push_back({variable_of(shape_, {cell, board_.truth->at(cell)}), -1});
      search.require(not_true);
      std::uint64_t failures = limits_.failures;
      if (search.solve(all, failures) == End::kMet) keep_counter(search.assignment());
    }
    is_denied(all);
  }

  // The claim is open: a counter-example as natural as a greedy choice makes it, and what is missing.
  bool close(FactSearch& search, const std::vector<int>& all) {
    const Closing closing = close_claim(board_, formula_of(shape_, claim_, false), mentioned(claim_), facts_, ground_, spare_, limits_);
    answer_.work += closing.work;
    answer_.additions = closing.additions;
    // Of the assignments that break the claim, one that keeps as many of the other rules as it can.
    if (closing.counter && !holds_in(claim_, *closing.counter)) {
      keep_counter(*closing.counter);
      return true;
    }
    std::uint64_t failures = limits_.failures;
    if (search.solve(all, failures) != End::kMet) return false;
    return true;
  }

  void keep_counter(const Assignment& grid) {
    if (answer_.counter_grid) return;
    assert(!holds_in(claim_, grid));
    answer_.counter_grid = grid;
    for (const Cell cell : mentioned(claim_)) answer_.counter.push_back({cell, grid.at(cell)});
  }

  const Board& board_;
  const Shape& shape_;
  const Claim& claim_;
  const Ground& ground_;
  const Spare& spare_;
  const SearchLimits& limits_;
  std::vector<CertificateFact> facts_;
  std::optional<ClaimAnswer> first_;  // proved with few facts, perhaps not the smallest reason
  ClaimAnswer answer_;
};

}  // namespace

Result<Board> judge_board(const Position& position) {
  Board board{position, {}, std::nullopt};
  SolutionList found = solutions(from_givens(position, position.givens()), 2, kMostNodes);
  if (found.end == SearchEnd::kNodeLimit || found.grids.size() != 1) {
    found = solutions(position, 2, kMostNodes);
    if (found.end == SearchEnd::kNodeLimit && found.grids.empty()) {
      return Error{ErrorCode::kLimit, "whether the puzzle has a solution could not be settled", "add givens: this grid leaves too much open", {}};
    }
  }
  if (found.grids.empty()) {
    return Error{ErrorCode::kNotProper, "the puzzle has no solution, so every claim about it would follow", "check the givens with: counterpoise check", {}};
  }
  if (found.grids.size() == 1 && found.end == SearchEnd::kComplete) {
    board.truth = found.grids.front();
    board.position = repaired(position, *board.truth, board.wrong_marks);
  }
  return board;
}

Result<ClaimAnswer> judge_claim(const Board& board, const Claim& claim, const Ground& ground, const Spare& spare, const SearchLimits& limits) {
  return Judge(board, claim, ground, spare, limits).run();
}

}  // namespace cp
