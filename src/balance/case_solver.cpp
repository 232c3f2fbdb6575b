// SPDX-License-Identifier: Apache-2.0
#include "balance/case_solver.h"

#include <algorithm>

namespace cp {

CaseSolver::CaseSolver(const Position& position, const Weighing& weighing)
    : position_(position), weighing_(weighing), shape_(position.shape()), both_(weighing.open_left | weighing.open_right) {}

const CellSet& CaseSolver::pan_cells(Pan pan) const {
  if (pan == Pan::kLeft) return weighing_.open_left;
  if (pan == Pan::kRight) return weighing_.open_right;
  return both_;
}

int CaseSolver::needed(Pan pan, Digit digit) const {
  int copies = 0;
  if (pan != Pan::kRight) copies += left_[digit.index];
  if (pan != Pan::kLeft) copies += right_[digit.index];
  return copies;
}

// Copies of the digit that one house can hold among these places: one, counted as often as its heaviest cell.
int CaseSolver::bound(House house, const CellSet& places) const {
  if (weighing_.layers.empty()) return 1;
  int most = 1;
  for (const Cell cell : places & shape_.cells(house)) most = std::max(most, weighing_.multiplicity(cell));
  return most;
}

void CaseSolver::start(const DigitCounts& shares) {
  impossible_ = false;
  lemmas_.clear();
  for (const Digit digit : shape_.digits()) {
    left_[digit.index] = weighing_.asked_left(digit) + shares[digit.index];
    right_[digit.index] = weighing_.asked_right(digit) + shares[digit.index];
    live_[digit.index] = position_.places(digit);
    removed_[digit.index] = {};
  }
}

void CaseSolver::run(const DigitCounts& shares, Depth depth) {
  start(shares);
  count_once(Pan::kLeft);
  if (!impossible_) count_once(Pan::kRight);
  if (depth == Depth::kCountOnce) return;
  bool moved = true;
  while (moved && !impossible_) {
    moved = count_all(Pan::kLeft) || count_all(Pan::kRight) || cover_all() || sight_all();
  }
}

// Strikes the digit out of the cells where it is still live; true when something went.
bool CaseSolver::remove(const CellSet& cells, Digit digit, std::vector<Candidate>& removed) {
  const CellSet hit = cells & live_[digit.index];
  if (hit.is_empty()) return false;
  live_[digit.index] -= hit;
  removed_[digit.index] |= hit;
  if (recording_) {
    for (const Cell cell : hit) removed.push_back({cell, digit});
  }
  return true;
}

bool CaseSolver::finish(Lemma lemma, bool impossible) {
  impossible_ = impossible_ || impossible;
  if (recording_) {
    std::sort(lemma.removed.begin(), lemma.removed.end());
    lemmas_.push_back(std::move(lemma));
  }
  return true;
}

// The digits need as many cells as can take any of them. True when that says something.
bool CaseSolver::apply_count(Pan pan, DigitSet digits) {
  CellSet touched;
  int need = 0;
  for (const Digit digit : digits) {
    touched |= places(pan, digit);
    need += needed(pan, digit);
  }
  const int have = weighing_.units(touched);
  if (have > need) return false;
  Lemma lemma{Lemma::Kind::kCount, pan, digits, {}, {}};
  if (have < need) return finish(std::move(lemma), true);
  bool moved = false;
  for (const Digit digit : shape_.digits() - digits) moved = remove(touched, digit, lemma.removed) || moved;
  return moved && finish(std::move(lemma), false);
}

bool CaseSolver::count_once(Pan pan) {
  DigitSet held;
  for (const Digit digit : shape_.digits()) {
    if (needed(pan, digit) > 0) held.add(digit);
  }
  return apply_count(pan, held);
}

// All sets of digits that the pan holds; acts on the smallest that says something new.
bool CaseSolver::count_all(Pan pan) {
  std::array<Digit, kMaxSide> held{};
  std::size_t count = 0;
  for (const Digit digit : shape_.digits()) {
    if (needed(pan, digit) > 0) held[count++] = digit;
  }
  const std::size_t sets = std::size_t{1} << count;
  sets_.assign(sets, {});
  DigitSet best;
  for (std::size_t set = 1; set < sets; ++set) {
    const Digit low = held[static_cast<std::size_t>(std::countr_zero(set))];
    const DigitsNeed& rest = sets_[set & (set - 1)];
    DigitsNeed& all = sets_[set];
    all = {rest.cells | places(pan, low), rest.need + needed(pan, low), rest.digits | DigitSet::of(low)};
    const int spare = weighing_.units(all.cells) - all.need;
    if (spare > 0 || (!best.is_empty() && best.size() <= all.digits.size())) continue;
    if (spare < 0 || meets_others(all.cells, all.digits)) best = all.digits;
  }
  return !best.is_empty() && apply_count(pan, best);
}

// Can any of these cells take a digit that is not in the set?
bool CaseSolver::meets_others(const CellSet& cells, DigitSet digits) const {
  for (const Digit digit : shape_.digits() - digits) {
    if (live_[digit.index].meets(cells)) return true;
  }
  return false;
}

bool CaseSolver::cover_all() {
  for (const Digit digit : shape_.digits()) {
    if (cover_digit(Pan::kLeft, digit) || cover_digit(Pan::kRight, digit)) return true;
    if (left_[digit.index] > 0 && right_[digit.index] > 0 && cover_digit(Pan::kBoth, digit)) return true;
  }
  return false;
}

namespace {

// Cells of the set that cannot see one another, taken greedily: no cover has fewer houses.
int independent_size(const Shape& shape, CellSet cells, int enough) {
  int size = 0;
  while (!cells.is_empty() && size < enough) {
    const Cell cell = cells.first();
    cells -= shape.peers(cell);
    cells.remove(cell);
    ++size;
  }
  return size;
}

}  // namespace

bool CaseSolver::cover_digit(Pan pan, Digit digit) {
  const int need = needed(pan, digit);
  if (need == 0 || need > kMostCoverHouses) return false;
  cover_pan_ = pan;
  cover_digit_ = digit;
  cover_places_ = places(pan, digit);
  if (independent_size(shape_, cover_places_, need + 1) > need) return false;
  return search_cover(cover_places_, need, 0);
}

// Covers the places with houses whose bounds add up to at most the budget; acts on the first cover that speaks.
bool CaseSolver::search_cover(const CellSet& left_over, int budget, int used) {
  if (left_over.is_empty()) {
    std::vector<House> houses(cover_.begin(), cover_.begin() + used);
    std::sort(houses.begin(), houses.end());
    return apply_cover(cover_pan_, cover_digit_, houses);
  }
  if (budget <= 0) return false;
  for (const House house : shape_.houses_of(left_over.first())) {
    cover_[static_cast<std::size_t>(used)] = house;
    if (search_cover(left_over - shape_.cells(house), budget - bound(house, cover_places_), used + 1)) return true;
  }
  return false;
}

bool CaseSolver::apply_cover(Pan pan, Digit digit, const std::vector<House>& houses) {
  const CellSet inside = places(pan, digit);
  CellSet covered;
  int room = 0;
  for (const House house : houses) {
    room += bound(house, inside);
    covered |= shape_.cells(house);
  }
  if (!inside.is_subset_of(covered) || room > needed(pan, digit)) return false;
  Lemma lemma{Lemma::Kind::kCover, pan, DigitSet::of(digit), houses, {}};
  if (room < needed(pan, digit)) return finish(std::move(lemma), true);
  // Every house is used to its bound inside: outside it is spent, and a cell in two of the houses would waste one.
  CellSet spoilt = (live_[digit.index] & covered) - inside;
  for (const Cell cell : inside & covered) {
    int taken = 0;
    for (const House house : houses) taken += shape_.cells(house).has(cell) ? bound(house, inside) : 0;
    if (taken > weighing_.multiplicity(cell)) spoilt.add(cell);
  }
  return remove(spoilt, digit, lemma.removed) && finish(std::move(lemma), false);
}

bool CaseSolver::sight_all() {
  for (const Digit digit : shape_.digits()) {
    for (const Pan pan : {Pan::kLeft, Pan::kRight, Pan::kBoth}) {
      if (pan == Pan::kBoth && (left_[digit.index] == 0 || right_[digit.index] == 0)) continue;
      if (sight_digit(pan, digit)) return true;
    }
  }
  return false;
}

bool CaseSolver::sight_digit(Pan pan, Digit digit) {
  const int need = needed(pan, digit);
  if (need == 0) return false;
  const CellSet inside = places(pan, digit);
  // A candidate sees at most three cells that do not see one another, and one house holds the rest.
  if (independent_size(shape_, inside, 3 + kMostSightHouses + 1) > 3 + kMostSightHouses) return false;
  for (const Cell cell : live_[digit.index]) {
    CellSet rest = inside - shape_.peers(cell);
    int still = need;
    if (inside.has(cell)) {
      rest.remove(cell);
      still -= weighing_.multiplicity(cell);
    }
    if (still < 0 || (rest.is_empty() && still > 0)) return apply_sight(pan, digit, {});
    if (still < 2 || rest.is_empty()) continue;
    for (const House house : shape_.houses_of(rest.first())) {
      if (rest.is_subset_of(shape_.cells(house)) && apply_sight(pan, digit, {house})) return true;
    }
  }
  return false;
}

// Strikes out every candidate of the digit that, if true, would leave its unseen places to too few houses.
bool CaseSolver::apply_sight(Pan pan, Digit digit, const std::vector<House>& houses) {
  const CellSet inside = places(pan, digit);
  CellSet covered;
  for (const House house : houses) covered |= shape_.cells(house);
  CellSet spoilt;
  for (const Cell cell : live_[digit.index]) {
    CellSet rest = inside - shape_.peers(cell);
    int still = needed(pan, digit);
    if (inside.has(cell)) {
      rest.remove(cell);
      still -= weighing_.multiplicity(cell);
    }
    int room = 0;
    for (const House house : houses) room += bound(house, rest);
    if (still < 0 || (rest.is_subset_of(covered) && room < still)) spoilt.add(cell);
  }
  Lemma lemma{Lemma::Kind::kSight, pan, DigitSet::of(digit), houses, {}};
  return remove(spoilt, digit, lemma.removed) && finish(std::move(lemma), false);
}

void CaseSolver::replay(const DigitCounts& shares, const std::vector<Lemma>& lemmas, std::size_t skip) {
  start(shares);
  for (std::size_t i = 0; i < lemmas.size() && !impossible_; ++i) {
    if (i == skip) continue;
    const Lemma& lemma = lemmas[i];
    if (lemma.kind == Lemma::Kind::kCount) apply_count(lemma.pan, lemma.digits);
    if (lemma.kind == Lemma::Kind::kCover) apply_cover(lemma.pan, lemma.digits.lowest(), lemma.houses);
    if (lemma.kind == Lemma::Kind::kSight) apply_sight(lemma.pan, lemma.digits.lowest(), lemma.houses);
  }
}

}  // namespace cp
