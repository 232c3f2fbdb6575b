// SPDX-License-Identifier: Apache-2.0
#include "balance/exact_pan.h"

#include <cstring>
#include <numeric>

namespace cp {

namespace {

using Sixteen = std::array<std::int8_t, 16>;

// For each set of four digits: 1 for each of its supersets.
constexpr std::array<Sixteen, 16> supersets() {
  std::array<Sixteen, 16> result{};
  for (unsigned set = 0; set < 16; ++set) {
    for (unsigned other = 0; other < 16; ++other) result[set][other] = (set & ~other) == 0 ? 1 : 0;
  }
  return result;
}

alignas(16) constexpr std::array<Sixteen, 16> kSupersets = supersets();

template <typename Vector>
Vector loaded(const Sixteen& bytes) {
  Vector vector;
  std::memcpy(&vector, bytes.data(), sizeof(vector));
  return vector;
}

// What stands with sets that lack the digit is added where the digit is there as well.
template <unsigned kDigitBit, typename BySet>
void add_to_supersets(BySet& counts) {
  for (unsigned first = 0; first < counts.size(); first += 2 * kDigitBit) {
    for (unsigned block = first; block < first + kDigitBit; ++block) counts[block + kDigitBit] += counts[block];
  }
}

}  // namespace

void ExactPan::add(std::uint32_t candidates) {
  own_[candidates >> kLow] += loaded<Counts>(kSupersets[candidates & 15U]);
  seen_ |= candidates;
  ++count_;
}

bool ExactPan::speaks(const std::array<int, kDigits>& need) {
  if (std::accumulate(need.begin(), need.end(), 0) != count_) return true;
  for (unsigned digit = 0; digit < kDigits; ++digit) {
    if (need[digit] == 0 && ((seen_ >> digit) & 1U) != 0) return true;
  }
  // Copies of each set. A digit with no copy counts one, so that a set does not pass again and again for digits the pan has not.
  const auto copies_of = [&](std::size_t digit) { return static_cast<std::int8_t>(need[digit] > 0 ? need[digit] : 1); };
  Counts low = {};
  for (unsigned digit = 0; digit < kLow; ++digit) low += -loaded<Counts>(kSupersets[1U << digit]) & (Counts{} + copies_of(digit));
  BySet copies;
  copies[0] = low;
  for (unsigned digit = kLow; digit < kDigits; ++digit) {
    const unsigned half = 1U << (digit - kLow);
    const Counts more = Counts{} + copies_of(digit);
    for (unsigned block = 0; block < half; ++block) copies[half + block] = copies[block] + more;
  }
  // Cells that hold nothing but digits of each set: sums over its subsets, digit by digit.
  add_to_supersets<1>(own_);
  add_to_supersets<2>(own_);
  add_to_supersets<4>(own_);
  add_to_supersets<8>(own_);
  add_to_supersets<16>(own_);
  Counts full = {};
  for (unsigned block = 0; block < kBlocks; ++block) full -= own_[block] >= copies[block];
  Sixteen sets{};
  std::memcpy(sets.data(), &full, sizeof(full));
  // The empty set and that of all digits of the pan are full and say nothing.
  if (std::accumulate(sets.begin(), sets.end(), 0) <= (count_ > 0 ? 2 : 1)) return false;
  return has_telling_set(copies);
}

bool ExactPan::has_telling_set(const BySet& copies) const {
  const auto at = [](const BySet& counts, unsigned set) { return int{counts[set >> kLow][set & 15U]}; };
  constexpr unsigned kAll = (1U << kDigits) - 1;
  for (unsigned set = 0; set <= kAll; ++set) {
    const int cells = at(own_, set);
    if (cells > at(copies, set) || (cells == at(copies, set) && cells + at(own_, kAll & ~set) < count_)) return true;
  }
  return false;
}

}  // namespace cp
