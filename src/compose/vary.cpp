// SPDX-License-Identifier: Apache-2.0
#include "compose/vary.h"

#include <algorithm>

namespace cp {

std::optional<Variation> vary(const Position& puzzle, const WayIn& way, const Transform& clothes) {
  std::vector<Weight> weights;
  for (const Weight& each : way.weights) weights.push_back({clothes.image(each.house), each.weight});
  std::vector<Candidate> falls;
  for (const Candidate& each : way.step.eliminations) falls.push_back(clothes.image(each));
  std::sort(falls.begin(), falls.end());
  Variation variation{clothes.image(puzzle), WayIn(clothes.image(way.stuck))};
  const Weighing weighing = weigh(variation.way.stuck, weights);
  Inference inference = infer(variation.way.stuck, weighing);
  for (LevelResult& level : inference.levels) {
    if (level.eliminations != falls) continue;
    variation.way.stage = way.stage;
    variation.way.step.technique = way.step.technique;
    variation.way.step.eliminations = std::move(falls);
    variation.way.step.reason = std::move(level.reason);
    variation.way.weights = weighing.weights;
    variation.way.free_slack = inference.free_slack;
    variation.way.end = clothes.image(way.end);
    return variation;
  }
  return std::nullopt;
}

}  // namespace cp
