// SPDX-License-Identifier: Apache-2.0
#include "balance/infer.h"

#include <algorithm>

#include "balance/case_solver.h"
#include "balance/exhaustive.h"

namespace cp {

namespace {

using Struck = std::array<CellSet, kMaxSide>;  // candidates by digit

std::vector<Candidate> listed_candidates(const Shape& shape, const Struck& struck) {
  std::vector<Candidate> candidates;
  for (const Digit digit : shape.digits()) {
    for (const Cell cell : struck[digit.index]) candidates.push_back({cell, digit});
  }
  std::sort(candidates.begin(), candidates.end());
  return candidates;
}

bool covers(const Struck& all, const Struck& part) {
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!part[i].is_subset_of(all[i])) return false;
  }
  return true;
}

bool is_empty(const Struck& struck) {
  return std::all_of(struck.begin(), struck.end(), [](const CellSet& cells) { return cells.is_empty(); });
}

Struck common(const Struck& a, const Struck& b) {
  Struck both{};
  for (std::size_t i = 0; i < both.size(); ++i) both[i] = a[i] & b[i];
  return both;
}

class Levels {
 public:
  Levels(const Position& position, const Weighing& weighing) : position_(position), weighing_(weighing), solver_(position, weighing) {}

  Inference run(int highest, bool weakest_only) {
    inference_.forced = forced_shares(position_, weighing_);
    inference_.free_slack = weighing_.slack - inference_.forced.total;
    if (inference_.free_slack < 0) {
      inference_.is_impossible = true;
      return inference_;
    }
    const auto goes_on = [&] { return !inference_.is_impossible && (!weakest_only || inference_.levels.empty()); };
    if (inference_.free_slack == 0) {
      const int counting = weighing_.slack == 0 ? 1 : 2;
      if (highest >= counting) exact_counts(counting, Depth::kCountOnce);
      if (highest >= 3 && goes_on()) exact_counts(3, Depth::kFull);
    } else if (highest >= 4 && inference_.free_slack <= kMostFreeSlack) {
      all_cases();
    }
    if (highest >= 5 && goes_on()) everything();
    return inference_;
  }

 private:
  void exact_counts(int level, Depth depth) {
    solver_.run(inference_.forced.least, depth);
    inference_.is_impossible = solver_.is_impossible();
    const Struck struck = solver_.removed();  // a copy: telling the case runs the solver again
    if (!inference_.is_impossible) report(level, struck, {inference_.forced.least}, depth);
  }

  void all_cases() {
    const auto cases = share_cases(position_, weighing_, inference_.forced, inference_.free_slack);
    Struck fallen{};
    bool any = false;
    for (const DigitCounts& shares : cases) {
      solver_.run(shares, Depth::kFull);
      if (solver_.is_impossible()) continue;
      fallen = any ? common(fallen, solver_.removed()) : solver_.removed();
      any = true;
      if (is_empty(fallen)) return;
    }
    inference_.is_impossible = !any;
    if (any) report(4, fallen, cases, Depth::kFull);
  }

  void everything() {
    const Fillings fillings = all_fillings(position_, weighing_);
    inference_.is_impossible = fillings.is_impossible;
    inference_.is_complete = fillings.is_complete;
    if (fillings.is_impossible) return;
    LevelResult result{5, fillings.fallen, head(5)};
    if (proves_more(result.eliminations)) inference_.levels.push_back(std::move(result));
  }

  [[nodiscard]] bool proves_more(const std::vector<Candidate>& eliminations) const {
    const std::size_t known = inference_.levels.empty() ? 0 : inference_.levels.back().eliminations.size();
    return eliminations.size() > known;
  }

  [[nodiscard]] BalanceReason head(int level) const {
    BalanceReason reason;
    reason.weights = weighing_.weights;
    reason.surplus = weighing_.surplus;
    reason.slack = weighing_.slack;
    reason.tally = weighing_.tally;
    reason.level = level;
    if (level >= 2 && level <= 4) reason.forced = inference_.forced.copies;
    return reason;
  }

  void report(int level, const Struck& struck, const std::vector<DigitCounts>& cases, Depth depth) {
    LevelResult result{level, listed_candidates(position_.shape(), struck), head(level)};
    if (!proves_more(result.eliminations)) return;
    for (const DigitCounts& shares : cases) result.reason.cases.push_back(told_case(shares, struck, depth));
    inference_.levels.push_back(std::move(result));
  }

  // Works the case out once more, keeping what is said, then drops what is not needed for `wanted`.
  ShareCase told_case(const DigitCounts& shares, const Struck& wanted, Depth depth) {
    solver_.set_recording(true);
    solver_.run(shares, depth);
    const bool impossible = solver_.is_impossible();
    std::vector<Lemma> lemmas = solver_.lemmas();
    for (std::size_t i = lemmas.size(); i-- > 0;) {
      solver_.replay(shares, lemmas, i);
      if (impossible ? solver_.is_impossible() : covers(solver_.removed(), wanted)) {
        lemmas = solver_.lemmas();
        i = std::min(i, lemmas.size());
      }
    }
    solver_.replay(shares, lemmas, lemmas.size());
    ShareCase told{shares, solver_.lemmas(), impossible};
    solver_.set_recording(false);
    return told;
  }

  const Position& position_;
  const Weighing& weighing_;
  CaseSolver solver_;
  Inference inference_;
};

void extend_cases(const Position& position, const Weighing& weighing, int digit, int free, DigitCounts& shares,
                  std::vector<DigitCounts>& cases) {
  if (digit == position.shape().side()) {
    if (free == 0) cases.push_back(shares);
    return;
  }
  const CellSet& places = position.places(Digit(digit));
  const int room = std::min(weighing.units(places & weighing.open_left) - weighing.asked_left(Digit(digit)),
                            weighing.units(places & weighing.open_right) - weighing.asked_right(Digit(digit)));
  const auto index = static_cast<std::size_t>(digit);
  const int least = shares[index];
  for (int more = 0; more <= free && least + more <= room; ++more) {
    shares[index] = least + more;
    extend_cases(position, weighing, digit + 1, free - more, shares, cases);
  }
  shares[index] = least;
}

}  // namespace

std::vector<DigitCounts> share_cases(const Position& position, const Weighing& weighing, const ForcedShares& forced, int free) {
  std::vector<DigitCounts> cases;
  DigitCounts shares = forced.least;
  extend_cases(position, weighing, 0, free, shares, cases);
  return cases;
}

Inference infer(const Position& position, const Weighing& weighing, int highest, bool weakest_only) {
  return Levels(position, weighing).run(highest, weakest_only);
}

}  // namespace cp
