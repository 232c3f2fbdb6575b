// SPDX-License-Identifier: Apache-2.0
#include "verify/balance_check.h"

#include <algorithm>
#include <vector>

#include "verify/case_check.h"
#include "verify/filling_check.h"

namespace cp {

namespace {

constexpr int kMostFree = 4;  // a table for more freely shared copies than this is refused, not enumerated

// shares[d] >= least[d], summing up to the slack: every such table entry must be answered.
void all_shares(const Shape& shape, int digit, int left, const DigitCounts& least, DigitCounts& shares, std::vector<DigitCounts>& result) {
  if (digit == shape.side()) {
    if (left == 0) result.push_back(shares);
    return;
  }
  const auto index = static_cast<std::size_t>(digit);
  int later = 0;  // forced copies of the digits still to come
  for (std::size_t i = index + 1; i < least.size(); ++i) later += least[i];
  for (int count = least[index]; count + later <= left; ++count) {
    shares[index] = count;
    all_shares(shape, digit + 1, left - count, least, shares, result);
  }
  shares[index] = 0;
}

// How many copies the witness forces into its pan; -1 when it is no witness.
int forced_copies(const Position& before, const Reweighed& reweighed, const ForcedCopies& witness) {
  CellSet used;
  int copies = 0;
  for (const House house : witness.houses) {
    if (house.index >= before.shape().house_count()) return -1;
    const CellSet places = before.places(house, witness.digit);
    if (places.is_empty() || places.meets(used)) return -1;
    used |= places;
    int least = kMaxCells * kMaxCells;
    for (const Cell cell : places) {
      const int units = reweighed.units[cell.index];
      const bool inside = witness.pan == Pan::kBoth ? units != 0 : (witness.pan == Pan::kLeft ? units > 0 : units < 0);
      if (!inside) return -1;
      least = std::min(least, std::abs(units));
    }
    copies += least;
  }
  return copies;
}

CheckResult forced_least(const Position& before, const Reweighed& reweighed, const BalanceReason& reason, DigitCounts& least) {
  for (const ForcedCopies& witness : reason.forced) {
    if (witness.digit.index >= before.shape().side()) return CheckResult::no("forced: no such digit");
    const int copies = forced_copies(before, reweighed, witness);
    if (copies < 0) return CheckResult::no("forced: the houses do not lie in the pan");
    const int tally = reweighed.tally[witness.digit.index];
    int share = 0;
    if (witness.pan == Pan::kLeft) share = copies - std::max(tally, 0);
    if (witness.pan == Pan::kRight) share = copies - std::max(-tally, 0);
    if (witness.pan == Pan::kBoth) share = (copies - std::abs(tally) + 1) / 2;
    least[witness.digit.index] = std::max(least[witness.digit.index], share);
  }
  return CheckResult::yes();
}

const ShareCase* find_case(const BalanceReason& reason, const DigitCounts& shares) {
  for (const ShareCase& entry : reason.cases) {
    if (entry.shares == shares) return &entry;
  }
  return nullptr;
}

CheckResult check_case(const Position& before, const Reweighed& reweighed, const Step& step, const BalanceReason& reason, const DigitCounts& shares) {
  CaseCheck check(before, reweighed, shares);
  if (!check.has_room()) return CheckResult::yes();
  const ShareCase* entry = find_case(reason, shares);
  if (entry == nullptr) return CheckResult::no("a case is missing from the table");
  for (const Lemma& lemma : entry->lemmas) {
    bool breaks = false;
    if (auto taken = check.take(lemma, breaks); !taken.holds) return taken;
    if (breaks) return CheckResult::yes();
  }
  if (entry->is_impossible) return CheckResult::no("a case is called impossible, but nothing shows it");
  for (const Candidate& elimination : step.eliminations) {
    if (!check.has_removed(elimination)) return CheckResult::no("a case keeps an eliminated candidate");
  }
  return CheckResult::yes();
}

CheckResult check_cases(const Position& before, const Reweighed& reweighed, const Step& step, const BalanceReason& reason) {
  DigitCounts least{};
  if (auto forced = forced_least(before, reweighed, reason, least); !forced.holds) return forced;
  int total = 0;
  for (const int share : least) total += share;
  if (reason.level == 1 && (reweighed.slack != 0 || total != 0)) return CheckResult::no("level 1 needs slack 0");
  if (reason.level <= 3 && total != reweighed.slack) return CheckResult::no("the slack is not used up");
  if (reweighed.slack - total > kMostFree) return CheckResult::no("too many shared copies for a table");
  std::vector<DigitCounts> table;
  DigitCounts shares{};
  all_shares(before.shape(), 0, reweighed.slack, least, shares, table);
  if (table.empty()) return CheckResult::no("no way to share the slack");
  for (const DigitCounts& entry : table) {
    if (auto checked = check_case(before, reweighed, step, reason, entry); !checked.holds) return checked;
  }
  return CheckResult::yes();
}

}  // namespace

CheckResult reweigh(const Position& before, const BalanceReason& reason, Reweighed& result) {
  const Shape& shape = before.shape();
  std::vector<CheckedInt> weight_of(static_cast<std::size_t>(shape.cell_count()));
  std::vector<bool> seen(static_cast<std::size_t>(shape.house_count()));
  CheckedInt surplus;
  for (const auto& [house, weight] : reason.weights) {
    if (house.index >= shape.house_count() || weight == 0 || seen[house.index]) return CheckResult::no("a house is unknown, repeated or weightless");
    seen[house.index] = true;
    surplus += weight;
    for (const Cell cell : shape.cells(house)) weight_of[cell.index] += weight;
  }
  std::array<CheckedInt, kMaxSide> tally{};
  for (const Digit digit : shape.digits()) tally[digit.index] = surplus;
  CheckedInt open_left;
  for (const Cell cell : shape.all_cells()) {
    const CheckedInt weight = weight_of[cell.index];
    if (!weight.is_ok() || std::abs(weight.value()) > kMaxCells) return CheckResult::no("overflow");
    if (const auto digit = before.digit_at(cell)) {
      tally[digit->index] -= weight;
      continue;
    }
    result.units[cell.index] = static_cast<int>(weight.value());
    if (weight.value() > 0) open_left += weight;
  }
  for (const Digit digit : shape.digits()) {
    const CheckedInt value = tally[digit.index];
    if (!value.is_ok() || std::abs(value.value()) > kMaxCells * kMaxCells) return CheckResult::no("overflow");
    result.tally[digit.index] = static_cast<int>(value.value());
    open_left -= std::max<std::int64_t>(value.value(), 0);
  }
  if (!open_left.is_ok() || !surplus.is_ok()) return CheckResult::no("overflow");
  result.slack = static_cast<int>(open_left.value());
  if (reason.surplus != surplus.value() || reason.slack != result.slack || reason.tally != result.tally) {
    return CheckResult::no("surplus, slack or tally are not what the houses give");
  }
  return CheckResult::yes();
}

CheckResult check_balance(const Position& before, const Step& step, const BalanceReason& reason) {
  if (!step.placements.empty()) return CheckResult::no("a balance places nothing by itself");
  Reweighed reweighed;
  if (auto weighed = reweigh(before, reason, reweighed); !weighed.holds) return weighed;
  if (reweighed.slack < 0) return CheckResult::no("negative slack: the position is impossible");
  if (reason.level >= 1 && reason.level <= 4) return check_cases(before, reweighed, step, reason);
  if (reason.level != 5) return CheckResult::no("unknown level");
  for (const Candidate& elimination : step.eliminations) {
    if (auto checked = check_no_filling(before, reweighed, elimination); !checked.holds) return checked;
  }
  return CheckResult::yes();
}

}  // namespace cp
