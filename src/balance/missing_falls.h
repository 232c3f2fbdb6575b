// SPDX-License-Identifier: Apache-2.0
// Why did nothing fall? The single candidates whose fall would make a silent balance speak.
#pragma once

#include <vector>

#include "balance/infer.h"

namespace cp {

inline constexpr int kMostSlackToMend = 3;  // with more free slack one candidate makes no difference worth telling

struct MissingFall {
  Candidate missing;  // if this candidate fell,
  LevelResult result; // the balance would prove this
};

// The digits of which both sides could share a copy more than is known. Empty when there is no free slack.
DigitSet unsure_digits(const Position& position, const Weighing& weighing, const Inference& inference);

// Tries every candidate of the open cells: what would the balance say (levels 1-4) if it fell? The best `limit`, those
// with the weakest level first, then those that strike out most, then in the order of the cells. Nothing is claimed
// about whether the candidate does fall. Empty when the balance speaks already, and when it is exact (no free slack):
// then nothing is missing, it is all known.
std::vector<MissingFall> missing_falls(const Position& position, const Weighing& weighing, const Inference& inference, std::size_t limit);

}  // namespace cp
