// SPDX-License-Identifier: Apache-2.0
#include "balance/missing_falls.h"

#include <algorithm>

namespace cp {

DigitSet unsure_digits(const Position& position, const Weighing& weighing, const Inference& inference) {
  DigitSet digits;
  if (inference.free_slack <= 0) return digits;
  for (const Digit digit : position.shape().digits()) {
    const CellSet& places = position.places(digit);
    const int room_left = weighing.units(places & weighing.open_left) - weighing.asked_left(digit);
    const int room_right = weighing.units(places & weighing.open_right) - weighing.asked_right(digit);
    if (std::min(room_left, room_right) > inference.forced.least[digit.index]) digits.add(digit);
  }
  return digits;
}

namespace {

// The last candidate of its cell or the last place of its house: it cannot fall.
bool is_plainly_true(const Position& position, Candidate candidate) {
  if (position.candidates(candidate.cell).size() == 1) return true;
  const auto houses = position.shape().houses_of(candidate.cell);
  return std::any_of(houses.begin(), houses.end(), [&](House house) {
    return (position.places(candidate.digit) & position.shape().cells(house)).size() == 1;
  });
}

}  // namespace

std::vector<MissingFall> missing_falls(const Position& position, const Weighing& weighing, const Inference& inference, std::size_t limit) {
  std::vector<MissingFall> falls;
  if (inference.is_impossible || !inference.levels.empty()) return falls;
  if (inference.free_slack <= 0 || inference.free_slack > kMostSlackToMend) return falls;
  for (const Cell cell : weighing.open_left | weighing.open_right) {
    for (const Digit digit : position.candidates(cell)) {
      if (is_plainly_true(position, {cell, digit})) continue;
      Position without = position;
      without.eliminate({cell, digit});
      // Known digits stay as they are, so the weighing does as well.
      Inference told = infer(without, weighing, 4, true);
      if (told.is_impossible || told.levels.empty()) continue;
      falls.push_back({{cell, digit}, std::move(told.levels.front())});
    }
  }
  std::stable_sort(falls.begin(), falls.end(), [](const MissingFall& a, const MissingFall& b) {
    if (a.result.level != b.result.level) return a.result.level < b.result.level;
    return a.result.eliminations.size() > b.result.eliminations.size();
  });
  if (falls.size() > limit) falls.resize(limit);
  return falls;
}

}  // namespace cp
