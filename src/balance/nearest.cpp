// SPDX-License-Identifier: Apache-2.0
#include "balance/nearest.h"

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

std::vector<NearMiss> nearest_misses(const Position& position, const Weighing& weighing, const Inference& inference, std::size_t limit) {
  std::vector<NearMiss> misses;
  if (inference.is_impossible || !inference.levels.empty() || inference.free_slack > kMostSlackToMend) return misses;
  for (const Cell cell : weighing.open_left | weighing.open_right) {
    for (const Digit digit : position.candidates(cell)) {
      Position without = position;
      without.eliminate({cell, digit});
      // Known digits stay as they are, so the weighing does as well.
      Inference told = infer(without, weighing, 4, true);
      if (told.is_impossible || told.levels.empty()) continue;
      misses.push_back({{cell, digit}, std::move(told.levels.front())});
    }
  }
  std::stable_sort(misses.begin(), misses.end(), [](const NearMiss& a, const NearMiss& b) {
    if (a.result.level != b.result.level) return a.result.level < b.result.level;
    return a.result.eliminations.size() > b.result.eliminations.size();
  });
  if (misses.size() > limit) misses.resize(limit);
  return misses;
}

}  // namespace cp
