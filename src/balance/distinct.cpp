// SPDX-License-Identifier: Apache-2.0
#include "balance/distinct.h"

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <optional>
#include <utility>

namespace cp {

namespace {

constexpr std::size_t kFirstSlots = std::size_t{1} << 17;
constexpr std::size_t kFirstSlotsOfSlackZero = std::size_t{1} << 14;  // some thousands of balances

// Sum of the 16 bytes, each 0 .. 15.
int byte_sum(DigitBytes bytes) {
  std::array<std::uint64_t, 2> words{};
  std::memcpy(words.data(), &bytes, sizeof(bytes));
  return static_cast<int>(((words[0] + words[1]) * 0x0101010101010101ULL) >> 56);
}

int positive_sum(DigitBytes tally) {
  const DigitBytes zero = {};
  return byte_sum(tally & (tally > zero));
}

std::uint64_t mixed(TwoWords left, TwoWords right) {
  std::uint64_t hash = left.low * 0x9E3779B97F4A7C15ULL + left.high * 0xC2B2AE3D27D4EB4FULL;
  hash ^= hash >> 29;
  hash += right.low * 0x165667B19E3779F9ULL + right.high * 0xD6E8FEB86659FD93ULL;
  hash ^= hash >> 32;
  return hash * 0x9E3779B97F4A7C15ULL;
}

// Which of two ways to name the same balance is easier: fewer houses, then a smaller surplus, then the earlier houses.
bool is_simpler(const DistinctBalance& a, const DistinctBalance& b) {
  if (a.house_count != b.house_count) return a.house_count < b.house_count;
  const int gap_a = std::abs(std::popcount(a.left_houses) - std::popcount(a.right_houses));
  const int gap_b = std::abs(std::popcount(b.left_houses) - std::popcount(b.right_houses));
  if (gap_a != gap_b) return gap_a < gap_b;
  return std::pair(a.left_houses, a.right_houses) < std::pair(b.left_houses, b.right_houses);
}

std::uint32_t tag(std::uint64_t hash) { return static_cast<std::uint32_t>(hash >> 32); }

void swap_pans(DistinctBalance& balance) {
  std::swap(balance.left, balance.right);
  std::swap(balance.left_houses, balance.right_houses);
  balance.tally = -balance.tally;
}

// The balance of two sides in the form that is kept: named with the fewest houses, the smaller cell set on the left.
DistinctBalance named(const SideClass& left, const SideClass& right, TwoWords open_left, TwoWords open_right, DigitBytes tally) {
  DistinctBalance balance{open_left, open_right, tally, left.houses, right.houses, 0, 0};
  const int count = std::popcount(left.houses) + std::popcount(right.houses);
  const int mirror_count = std::popcount(left.mirror) + std::popcount(right.mirror);
  balance.house_count = static_cast<std::int16_t>(count);
  if (mirror_count < count) {
    // The complement says the same with the pans the other way round.
    balance.left_houses = right.mirror;
    balance.right_houses = left.mirror;
    balance.house_count = static_cast<std::int16_t>(mirror_count);
  }
  if (balance.right < balance.left) swap_pans(balance);
  balance.slack = static_cast<std::int16_t>(balance.left.size() - positive_sum(balance.tally));
  return balance;
}

// How many houses it takes to name the balance of two sides, or its complement, which says the same.
int fewest_houses(const SideClass& left, const SideClass& right) {
  return std::min(std::popcount(left.houses) + std::popcount(right.houses), std::popcount(left.mirror) + std::popcount(right.mirror));
}

// Goes through all right sides for one left side, sixteen at a time. For each digit the two pans have to share as many
// places as both lack the digit at least: slack = open cells of the left side - copies it lacks + sum over the digits of the
// smaller of both numbers of copies - open cells that both cover. On 9x9 a right side is one of 14 choices in each of three stacks,
// so the cells covered by both are a sum of three small numbers, and the last stack's choices stand side by side.
class PairScreen {
 public:
  static constexpr std::size_t kChoices = 14;
  static bool fits(const Shape& shape) { return shape.side() == 9 && shape.band_count() == 3 && shape.stack_count() == 3; }

  explicit PairScreen(const std::vector<Side>& rights) : lacking_(kChoices * kChoices) {
    for (std::size_t i = 0; i < kChoices; ++i) {
      // Choice 0 is no house at all, so these sides have houses in one stack only.
      stacks_[0][i] = rights[i * kChoices * kChoices].open;
      stacks_[1][i] = rights[i * kChoices].open;
      stacks_[2][i] = rights[i].open;
    }
    for (std::size_t group = 0; group < lacking_.size(); ++group) {
      for (std::size_t digit = 0; digit < 9; ++digit) {
        for (std::size_t i = 0; i < kChoices; ++i) lacking_[group][digit][i] = static_cast<std::int8_t>(-rights[group * kChoices + i].known[digit]);
      }
    }
  }

  // Visits the numbers of the right sides within the slack, in order.
  template <typename Visit>
  void within(const SideClass& left, int most_slack, Visit visit) const {
    std::array<Bytes, 9> wanted;
    int copies = 0;
    for (std::size_t digit = 0; digit < 9; ++digit) {
      const auto lacks = static_cast<std::int8_t>(-left.known[digit]);
      copies += lacks;
      wanted[digit] = Bytes{} + lacks;
    }
    std::array<std::array<std::int8_t, 16>, 3> covered{};
    for (std::size_t stack = 0; stack < 3; ++stack) {
      for (std::size_t i = 0; i < kChoices; ++i) covered[stack][i] = static_cast<std::int8_t>((left.open & stacks_[stack][i]).size());
    }
    for (std::size_t i = kChoices; i < 16; ++i) covered[2][i] = INT8_MIN;  // no choice: out of any bound
    Bytes last;
    std::memcpy(&last, covered[2].data(), sizeof(last));
    const int spare = left.open.size() - copies;  // 0 unless the position clashes
    for (std::size_t group = 0; group < lacking_.size(); ++group) {
      Bytes both = {};
      for (std::size_t digit = 0; digit < 9; ++digit) {
        const Bytes& lacks = lacking_[group][digit];
        both += lacks < wanted[digit] ? lacks : wanted[digit];
      }
      // Slack within the bound: both <= last + rest. Both sides stay far below 127 (81 cells, small bounds).
      const int rest = covered[0][group / kChoices] + covered[1][group % kChoices] + most_slack - spare;
      const Bytes bound = last + static_cast<std::int8_t>(rest < 0 ? 0 : rest);
      const auto passes = both <= bound;
      std::array<std::uint64_t, 2> words{};
      std::memcpy(words.data(), &passes, sizeof(passes));
      for (std::size_t half = 0; half < 2; ++half) {
        for (std::uint64_t set = words[half] & 0x0101010101010101ULL; set != 0; set &= set - 1) {
          visit(group * kChoices + half * 8 + static_cast<std::size_t>(std::countr_zero(set)) / 8);
        }
      }
    }
  }

 private:
  typedef std::int8_t Bytes __attribute__((vector_size(16)));
  std::array<std::array<TwoWords, kChoices>, 3> stacks_{};
  std::vector<std::array<Bytes, 9>> lacking_;  // copies that a right side lacks: by the choices in the first two stacks, by digit
};

}  // namespace

DistinctBalances::DistinctBalances(const Position& position, int most_slack, int most_houses)
    : slots_(most_slack == 0 ? kFirstSlotsOfSlackZero : kFirstSlots) {
  const std::vector<Side> all_lefts = left_sides(position);
  const std::vector<Side> all_rights = right_sides(position);
  scanned_ = static_cast<std::uint64_t>(all_lefts.size()) * all_rights.size();
  const std::vector<SideClass> lefts = classes_of(all_lefts);
  const std::vector<SideClass> rights = classes_of(all_rights);
  const TwoWords open = two_words(position.open());
  balances_.reserve(slots_.size());
  const auto weigh = [&](const SideClass& left, const SideClass& right) {
    if (most_houses != kAnyHouses && fewest_houses(left, right) > most_houses) return;
    const DigitBytes tally = right.known - left.known;
    const TwoWords open_left = left.open - right.open;
    const int slack = open_left.size() - positive_sum(tally);
    if (slack > most_slack) return;
    const TwoWords open_right = right.open - left.open;
    if (slack < 0) impossible_ = true;
    if (slack < 0 || (open_left | open_right).is_empty()) return;
    wait(named(left, right, open_left, open_right, tally));
  };
  std::optional<PairScreen> screen;
  if (PairScreen::fits(position.shape())) screen.emplace(all_rights);
  // For each side the class that begins with it.
  std::vector<const SideClass*> class_begun(all_rights.size(), nullptr);
  for (const SideClass& right : rights) class_begun[right.first] = &right;
  for (const SideClass& left : lefts) {
    if (open - left.open < left.open) continue;  // its complement is weighed instead
    if (screen) {
      screen->within(left, most_slack, [&](std::size_t side) {
        if (class_begun[side] != nullptr) weigh(left, *class_begun[side]);
      });
    } else {
      for (const SideClass& right : rights) weigh(left, right);
    }
  }
  meet_waiting();
}

// Puts the balance in line. Looking things up in a large table is mostly waiting for memory, so the places are asked
// for early and looked at a few balances later.
void DistinctBalances::wait(const DistinctBalance& balance) {
  ++passed_;
  const std::uint64_t hash = mixed(balance.left, balance.right);
  __builtin_prefetch(&slots_[static_cast<std::size_t>(hash) & (slots_.size() - 1)]);
  waiting_[waiting_count_++] = {balance, hash};
  if (waiting_count_ == waiting_.size()) meet_waiting();
}

void DistinctBalances::meet_waiting() {
  for (std::size_t i = 0; i < waiting_count_; ++i) {
    const Slot& slot = slots_[static_cast<std::size_t>(waiting_[i].hash) & (slots_.size() - 1)];
    if (slot.number != 0) __builtin_prefetch(&balances_[slot.number - 1]);
  }
  for (std::size_t i = 0; i < waiting_count_; ++i) meet(waiting_[i].balance, waiting_[i].hash);
  waiting_count_ = 0;
}

void DistinctBalances::meet(const DistinctBalance& balance, std::uint64_t hash) {
  Slot& slot = slots_[slot_of(balance.left, balance.right, hash)];
  if (slot.number != 0) {
    DistinctBalance& known = balances_[slot.number - 1];
    if (is_simpler(balance, known)) known = balance;
    return;
  }
  balances_.push_back(balance);
  slot = {tag(hash), static_cast<std::uint32_t>(balances_.size())};
  if (balances_.size() * 2 > slots_.size()) grow();
}

std::size_t DistinctBalances::slot_of(TwoWords left, TwoWords right, std::uint64_t hash) const {
  const std::size_t mask = slots_.size() - 1;
  std::size_t at = static_cast<std::size_t>(hash) & mask;
  while (slots_[at].number != 0) {
    if (slots_[at].tag == tag(hash)) {
      const DistinctBalance& balance = balances_[slots_[at].number - 1];
      if (balance.left == left && balance.right == right) break;
    }
    at = (at + 1) & mask;
  }
  return at;
}

void DistinctBalances::grow() {
  slots_.assign(slots_.size() * 4, {});
  for (std::size_t i = 0; i < balances_.size(); ++i) {
    const std::uint64_t hash = mixed(balances_[i].left, balances_[i].right);
    slots_[slot_of(balances_[i].left, balances_[i].right, hash)] = {tag(hash), static_cast<std::uint32_t>(i + 1)};
  }
}

bool DistinctBalances::has(TwoWords left, TwoWords right) const {
  if (right < left) std::swap(left, right);
  return slots_[slot_of(left, right, mixed(left, right))].number != 0;
}

}  // namespace cp
