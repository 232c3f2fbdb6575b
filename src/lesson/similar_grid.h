// SPDX-License-Identifier: Apache-2.0
// The same grid in other clothes: lines moved inside their bands, bands moved, perhaps turned over its diagonal, digits renamed.
// Whatever holds of a grid holds of its image.
#pragma once

#include <cstdint>
#include <vector>

#include "grid/position.h"
#include "step/balance_reason.h"

namespace cp {

class Similarity {
 public:
  Similarity(const Shape& shape, std::uint64_t seed);

  [[nodiscard]] Cell image(Cell cell) const { return cells_[cell.index]; }
  [[nodiscard]] Digit image(Digit digit) const { return digits_[digit.index]; }
  [[nodiscard]] House image(House house) const;
  [[nodiscard]] Candidate image(const Candidate& candidate) const { return {image(candidate.cell), image(candidate.digit)}; }
  [[nodiscard]] std::vector<Candidate> image(const std::vector<Candidate>& candidates) const;  // ordered
  [[nodiscard]] std::vector<Weight> image(const std::vector<Weight>& weights) const;          // ordered
  // Givens stay givens, placed digits stay placed, candidates go along.
  [[nodiscard]] Position image(const Position& position) const;

 private:
  const Shape& shape_;
  std::vector<Cell> cells_;
  std::vector<Digit> digits_;
};

}  // namespace cp
