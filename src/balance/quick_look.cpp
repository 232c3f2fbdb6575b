// SPDX-License-Identifier: Apache-2.0
#include "balance/quick_look.h"

#include <algorithm>
#include <cassert>
#include <cstring>

#include "balance/case_solver.h"
#include "balance/exact_pan.h"

namespace cp {

namespace {

constexpr std::uint32_t kBand = (1U << 27) - 1;
constexpr std::size_t kFirstRegions = std::size_t{1} << 12;

Bands bands_of(TwoWords cells) {
  const auto low = static_cast<std::uint32_t>(cells.low & kBand);
  const auto middle = static_cast<std::uint32_t>((cells.low >> 27) & kBand);
  const auto high = static_cast<std::uint32_t>(((cells.low >> 54) | (cells.high << 10)) & kBand);
  return Bands{low, middle, high, 0};
}

struct Halves {
  std::uint64_t first;
  std::uint64_t second;
};

Halves halves(Bands cells) {
  Halves words;
  std::memcpy(&words, &cells, sizeof(words));
  return words;
}

bool is_empty(Bands cells) {
  const Halves words = halves(cells);
  return (words.first | words.second) == 0;
}

int size(Bands cells) {
  const Halves words = halves(cells);
  return std::popcount(words.first) + std::popcount(words.second);
}

// Index 0..80 of the first cell. Precondition: not empty.
int first(Bands cells) {
  const Halves words = halves(cells);
  if (words.first == 0) return 54 + std::countr_zero(words.second);
  const int at = std::countr_zero(words.first);
  return at < 32 ? at : 27 + (at - 32);
}

void remove_first(Bands& cells, int index) { cells[index / 27] &= cells[index / 27] - 1; }

Bands key_of(int digit, Bands places) {
  places[3] = static_cast<std::uint32_t>(digit) + 1;
  return places;
}

// Row, column and box of a cell, as house indices.
std::array<int, 3> houses_of(int cell) {
  const int row = cell / 9;
  const int column = cell % 9;
  return {row, 9 + column, 18 + 3 * (row / 3) + column / 3};
}

// Three bits: which of the three groups of `width` bits hold something; `stride` bits apart.
std::uint32_t groups(std::uint32_t bits, std::uint32_t mask, int stride) {
  return static_cast<std::uint32_t>((bits & mask) != 0) | static_cast<std::uint32_t>((bits & (mask << stride)) != 0) << 1 |
         static_cast<std::uint32_t>((bits & (mask << (2 * stride))) != 0) << 2;
}

// Bit per house that the cells touch: rows, columns, boxes.
std::uint32_t houses_touched(Bands cells) {
  std::uint32_t rows = 0;
  std::uint32_t boxes = 0;
  std::uint32_t columns = 0;
  for (int band = 0; band < 3; ++band) {
    const std::uint32_t bits = cells[band];
    const std::uint32_t folded = (bits | bits >> 9 | bits >> 18) & 511U;
    rows |= groups(bits, 511U, 9) << (3 * band);
    boxes |= groups(folded, 7U, 3) << (3 * band);
    columns |= folded;
  }
  return rows | columns << 9 | boxes << 18;
}

// The most houses of a disjoint family (balance/forced_shares.h): rows, columns, boxes, or mixed by band or stack.
int best_family(std::uint32_t houses) {
  const std::uint32_t rows = houses & 511U;
  const std::uint32_t columns = (houses >> 9) & 511U;
  const std::uint32_t boxes = houses >> 18;
  int by_band = 0;
  int by_stack = 0;
  for (int i = 0; i < 3; ++i) {
    by_band += std::max(std::popcount((rows >> (3 * i)) & 7U), std::popcount((boxes >> (3 * i)) & 7U));
    by_stack += std::max(std::popcount((columns >> (3 * i)) & 7U), std::popcount((boxes >> i) & 0111U));
  }
  return std::max(by_band, by_stack);
}

// Sets of digits that a pan holds, and how many cells more than needed can take them. Calls speaks(set, spare) for
// every set with spare <= 1 whose cells could lose something; stops when it returns true.
template <typename Speaks>
bool scan_counts(const std::array<Bands, 9>& places, const std::array<int, 9>& need, std::uint32_t shareable, Speaks&& speaks) {
  std::array<int, 9> held{};
  int count = 0;
  std::uint32_t zeros = 0;  // digits with no known copy that may still be shared, as bits of `held`
  for (int digit = 0; digit < 9; ++digit) {
    const bool may_share = ((shareable >> digit) & 1U) != 0;
    if (need[static_cast<std::size_t>(digit)] == 0 && !may_share) continue;
    if (need[static_cast<std::size_t>(digit)] == 0) zeros |= 1U << count;
    held[static_cast<std::size_t>(count++)] = digit;
  }
  std::array<Bands, 512> cells;
  std::array<std::int8_t, 512> needs;
  std::array<std::uint16_t, 512> digits;
  cells[0] = Bands{};
  needs[0] = 0;
  digits[0] = 0;
  for (std::uint32_t set = 1; set < (1U << count); ++set) {
    const auto digit = static_cast<std::size_t>(held[static_cast<std::size_t>(std::countr_zero(set))]);
    const std::uint32_t rest = set & (set - 1);
    cells[set] = cells[rest] | places[digit];
    needs[set] = static_cast<std::int8_t>(needs[rest] + need[digit]);
    digits[set] = static_cast<std::uint16_t>(digits[rest] | 1U << digit);
    if (std::popcount(set & zeros) > 1) continue;  // only one of them is shared at a time
    const int spare = size(cells[set]) - needs[set];
    if (spare > 1) continue;
    if (speaks(digits[set], spare, cells[set])) return true;
  }
  return false;
}

}  // namespace

QuickLook::QuickLook(const Position& position) : regions_(kFirstRegions) {
  const Shape& shape = position.shape();
  assert(shape.side() == 9 && shape.box_rows() == 3);
  for (int i = 0; i < 27; ++i) house_cells_[static_cast<std::size_t>(i)] = bands_of(two_words(shape.cells(House(i))));
  for (int i = 0; i < 81; ++i) {
    peers_[static_cast<std::size_t>(i)] = bands_of(two_words(shape.peers(Cell(i))));
    self_[static_cast<std::size_t>(i)] = bands_of(two_words(CellSet::of(Cell(i))));
  }
  for (std::size_t digit = 0; digit < 9; ++digit) {
    places_[digit] = bands_of(two_words(position.places(Digit(static_cast<int>(digit)))));
    houses_with_[digit] = houses_touched(places_[digit]);
    for (const Cell cell : position.places(Digit(static_cast<int>(digit)))) candidates_[static_cast<std::size_t>(cell.index)] |= static_cast<std::uint16_t>(1U << digit);
  }
}

// Where a key is looked for first.
std::size_t QuickLook::first_slot(Bands key) const {
  const Halves words = halves(key);
  std::uint64_t hash = words.first * 0x9E3779B97F4A7C15ULL ^ words.second * 0xC2B2AE3D27D4EB4FULL;
  hash ^= hash >> 31;
  return static_cast<std::size_t>(hash * 0x165667B19E3779F9ULL >> 20) & (regions_.size() - 1);
}

void QuickLook::fetch_early(int digit, Bands places) const { __builtin_prefetch(&regions_[first_slot(key_of(digit, places))]); }

std::size_t QuickLook::slot_of(Bands key) const {
  std::size_t at = first_slot(key);
  while (regions_[at].key[3] != 0 && !is_empty(regions_[at].key ^ key)) at = (at + 1) & (regions_.size() - 1);
  return at;
}

QuickLook::Region& QuickLook::region(int digit, Bands places) {
  const Bands key = key_of(digit, places);
  std::size_t at = slot_of(key);
  if (regions_[at].key[3] == 0) {
    if (++region_count_ * 2 > regions_.size()) {
      grow();
      at = slot_of(key);
    }
    regions_[at].key = key;
    regions_[at].forced_copies = static_cast<std::int16_t>(forced_copies(digit, places));
  }
  return regions_[at];
}

void QuickLook::grow() {
  const std::vector<Region> old = std::move(regions_);
  regions_.assign(old.size() * 4, {});
  for (const Region& known : old) {
    if (known.key[3] != 0) regions_[slot_of(known.key)] = known;
  }
}

int QuickLook::forced_copies(int digit, Bands inside) const {
  const auto index = static_cast<std::size_t>(digit);
  return best_family(houses_with_[index] & ~houses_touched(places_[index] & ~inside));
}

int QuickLook::forced_least(const Hand& hand, int digit) {
  const auto index = static_cast<std::size_t>(digit);
  const int asked = hand.need_left[index] + hand.need_right[index];
  const int by_left = region(digit, hand.left[index]).forced_copies - hand.need_left[index];
  const int by_right = region(digit, hand.right[index]).forced_copies - hand.need_right[index];
  const int excess = region(digit, hand.left[index] | hand.right[index]).forced_copies - asked + 1;
  return std::max({0, by_left, by_right, excess > 0 ? excess / 2 : 0});
}

QuickLook::Answer QuickLook::look(const DistinctBalance& balance, int most_free_slack) {
  const Bands left = bands_of(balance.left);
  const Bands right = bands_of(balance.right);
  Hand hand;
  hand.open_left = left;
  hand.open_right = right;
  Answer answer{balance.slack, 0, 1, true};
  for (std::size_t digit = 0; digit < 9; ++digit) {
    hand.left[digit] = places_[digit] & left;
    hand.right[digit] = places_[digit] & right;
    hand.need_left[digit] = std::max<int>(balance.tally[digit], 0);
    hand.need_right[digit] = std::max<int>(-balance.tally[digit], 0);
    if (balance.slack == 0) {  // what is forced beyond that is for infer() to find
      if (balance.tally[digit] != 0) fetch_early(static_cast<int>(digit), balance.tally[digit] > 0 ? hand.left[digit] : hand.right[digit]);
      continue;
    }
    hand.room[digit] = std::min(size(hand.left[digit]) - hand.need_left[digit], size(hand.right[digit]) - hand.need_right[digit]);
    if (hand.room[digit] <= 0) continue;
    for (const Bands places : {hand.left[digit], hand.right[digit], hand.left[digit] | hand.right[digit]}) fetch_early(static_cast<int>(digit), places);
  }
  for (std::size_t digit = 0; digit < 9; ++digit) {
    if (hand.room[digit] <= 0) continue;
    const int least = forced_least(hand, static_cast<int>(digit));
    hand.need_left[digit] += least;
    hand.need_right[digit] += least;
    hand.room[digit] -= least;
    answer.free_slack -= least;
    answer.forced_digits += least > 0 ? 1 : 0;
  }
  if (answer.free_slack == 1) {
    answer.cases = static_cast<int>(std::count_if(hand.room.begin(), hand.room.end(), [](int room) { return room > 0; }));
    answer.may_say = most_free_slack >= 1 && cases_speak(hand);
  } else if (answer.free_slack == 0) {
    answer.may_say = exact_speaks(hand);
  } else {
    answer.may_say = answer.free_slack <= most_free_slack;
  }
  return answer;
}

bool QuickLook::pan_speaks(Bands cells, const std::array<int, 9>& need) const {
  ExactPan pan;
  for (int band = 0; band < 3; ++band) {
    for (std::uint32_t bits = cells[band]; bits != 0; bits &= bits - 1) pan.add(candidates_[static_cast<std::size_t>(27 * band + std::countr_zero(bits))]);
  }
  return pan.speaks(need);
}

// Every digit has its exact number of copies in both pans.
bool QuickLook::exact_speaks(const Hand& hand) {
  if (pan_speaks(hand.open_left, hand.need_left) || pan_speaks(hand.open_right, hand.need_right)) return true;
  for (int digit = 0; digit < 9; ++digit) {
    if (houses_speak(hand, digit, 0)) return true;
  }
  return false;
}

// One copy of an unknown digit is shared. Something falls in every case only if either a digit that can not be the
// shared one leaves a pan, or every case has something of its own to say, or the case of a digit that leaves the pan in
// all other cases has.
bool QuickLook::cases_speak(const Hand& hand) {
  std::uint32_t shareable = 0;
  for (std::size_t digit = 0; digit < 9; ++digit) {
    if (hand.room[digit] > 0) shareable |= 1U << digit;
  }
  if (shareable == 0) return true;
  std::uint32_t lonely = 0;  // shareable digits that leave a pan in all cases but their own
  for (std::size_t digit = 0; digit < 9; ++digit) {
    const bool leaves = (hand.need_left[digit] == 0 && !is_empty(hand.left[digit])) || (hand.need_right[digit] == 0 && !is_empty(hand.right[digit]));
    if (!leaves) continue;
    if (((shareable >> digit) & 1U) == 0) return true;
    lonely |= 1U << digit;
  }
  if (std::popcount(shareable) == 1) return true;
  std::uint32_t speaking = 0;  // cases that have something to say
  const auto is_decided = [&] { return (speaking & lonely) != 0 || speaking == shareable; };
  std::uint32_t by_houses = 0;
  for (int digit = 0; digit < 9; ++digit) {
    if (houses_speak(hand, digit, 0)) by_houses |= 1U << digit;
    if (((shareable >> digit) & 1U) != 0 && houses_speak(hand, digit, 1)) speaking |= 1U << digit;
  }
  for (int digit = 0; digit < 9; ++digit) {
    if ((by_houses & ~(1U << digit)) != 0) speaking |= shareable & (1U << digit);
  }
  if (is_decided()) return true;
  const auto pan_speaks = [&](const std::array<Bands, 9>& places, const std::array<int, 9>& need) {
    std::uint32_t zeros = 0;
    for (std::size_t digit = 0; digit < 9; ++digit) zeros |= need[digit] == 0 ? 1U << digit : 0U;
    return scan_counts(places, need, shareable, [&](std::uint32_t set, int spare, Bands cells) {
      const std::uint32_t zero = set & zeros;
      const auto loses = [&](std::uint32_t shared) {
        for (std::size_t digit = 0; digit < 9; ++digit) {
          if (((set >> digit) & 1U) != 0 || is_empty(places[digit] & cells)) continue;
          if (need[digit] > 0 || ((shared >> digit) & 1U) != 0) return true;
        }
        return false;
      };
      std::uint32_t of_cases = 0;
      if (zero != 0) {
        of_cases = spare < 1 || (spare == 1 && loses(0)) ? zero : 0U;
      } else if (spare < 0) {
        of_cases = shareable;
      } else if (spare == 0) {
        of_cases = shareable & set;  // one copy too many there: the case breaks
        for (std::uint32_t left = shareable & ~set; left != 0; left &= left - 1) {
          const std::uint32_t one = left & (~left + 1);
          if (loses(one)) of_cases |= one;
        }
      } else if (loses(0)) {
        of_cases = shareable & set;
      }
      speaking |= of_cases & shareable;
      return is_decided();
    });
  };
  return pan_speaks(hand.left, hand.need_left) || pan_speaks(hand.right, hand.need_right);
}

// Do covers or sight of this digit say something when `more` copies of it are shared beyond the known ones?
bool QuickLook::houses_speak(const Hand& hand, int digit, int more) {
  const auto index = static_cast<std::size_t>(digit);
  const int left = hand.need_left[index] + more;
  const int right = hand.need_right[index] + more;
  if (one_pan_speaks(digit, hand.left[index], left) || one_pan_speaks(digit, hand.right[index], right)) return true;
  return left > 0 && right > 0 && one_pan_speaks(digit, hand.left[index] | hand.right[index], left + right);
}

bool QuickLook::one_pan_speaks(int digit, Bands inside, int need) {
  if (need == 0) return false;
  if (need > 15) return works_out(digit, inside, need);
  Region& known = region(digit, inside);
  const auto bit = static_cast<std::uint16_t>(1U << need);
  if ((known.asked & bit) == 0) {
    known.asked |= bit;
    if (works_out(digit, inside, need)) known.speaks |= bit;
  }
  return (known.speaks & bit) != 0;
}

bool QuickLook::works_out(int digit, Bands inside, int need) const {
  const int independent = independent_size(inside, std::max(need, 3 + kMostSightHouses) + 1);
  if (need <= kMostCoverHouses && independent <= need && cover_speaks(digit, inside, Cover{inside, Bands{}, Bands{}}, need)) return true;
  return independent <= 3 + kMostSightHouses && sight_speaks(digit, inside, need);
}

int QuickLook::independent_size(Bands cells, int enough) const {
  int count = 0;
  while (count < enough && !is_empty(cells)) {
    const int cell = first(cells);
    remove_first(cells, cell);
    cells &= ~peers_[static_cast<std::size_t>(cell)];
    ++count;
  }
  return count;
}

// Is there a cover that strikes something out (or is too small)?
bool QuickLook::cover_speaks(int digit, Bands inside, const Cover& cover, int budget) const {
  if (is_empty(cover.rest)) {
    return budget > 0 || !is_empty(cover.twice) || !is_empty(places_[static_cast<std::size_t>(digit)] & cover.cells & ~inside);
  }
  if (budget == 0) return false;
  for (const int house : houses_of(first(cover.rest))) {
    const Bands cells = house_cells_[static_cast<std::size_t>(house)];
    const Cover next = {cover.rest & ~cells, cover.cells | cells, cover.twice | (inside & cover.cells & cells)};
    if (cover_speaks(digit, inside, next, budget - 1)) return true;
  }
  return false;
}

// Does a candidate see all these places, or all but those in one house? Outside the pan it has all copies against it,
// inside one less: it is a copy itself. The places in one house are at most one copy.
bool QuickLook::sight_speaks(int digit, Bands inside, int need) const {
  const Bands& among = places_[static_cast<std::size_t>(digit)];
  const auto speaks = [&](std::size_t cell, int against) {
    const Bands unseen = inside & ~peers_[cell] & ~self_[cell];
    if (against <= 0) return false;
    if (is_empty(unseen)) return true;
    return against > 1 && is_in_one_house(unseen);
  };
  for (int band = 0; band < 3; ++band) {
    for (std::uint32_t bits = among[band]; bits != 0; bits &= bits - 1) {
      const int at = std::countr_zero(bits);
      const bool is_inside = ((inside[band] >> at) & 1U) != 0;
      if (speaks(static_cast<std::size_t>(27 * band + at), is_inside ? need - 1 : need)) return true;
    }
  }
  return false;
}

bool QuickLook::is_in_one_house(Bands cells) const {
  const auto houses = houses_of(first(cells));
  return std::any_of(houses.begin(), houses.end(), [&](int house) { return is_empty(cells & ~house_cells_[static_cast<std::size_t>(house)]); });
}

}  // namespace cp
