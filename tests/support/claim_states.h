// SPDX-License-Identifier: Apache-2.0
// Positions, footings and claims for comparisons: the same question for src/claim and for the oracle.
#pragma once

#include "claim/verdict.h"
#include "support/random_sayings.h"
#include "support/random_states.h"

namespace cp::support {

inline std::vector<int> digits_of(const FullGrid& grid) {
  std::vector<int> digits;
  for (const Cell cell : grid.shape().all_cells()) digits.push_back(grid.at(cell).number());
  return digits;
}

inline oracle::Saying balance_saying(const Shape& shape, const std::vector<Weight>& weights) {
  oracle::Saying saying;
  saying.what = oracle::Saying::What::kSurplus;
  int surplus = 0;
  for (const auto& [house, weight] : weights) {
    surplus += weight;
    for (const Cell cell : shape.cells(house)) {
      for (int i = 0; i < std::abs(weight); ++i) (weight > 0 ? saying.cells : saying.others).push_back(cell.index);
    }
  }
  for (int i = 0; i < std::abs(surplus); ++i) {
    for (int digit = 1; digit <= shape.side(); ++digit) saying.digits.push_back(digit);
  }
  // A negative surplus is one of the other side.
  if (surplus < 0) std::swap(saying.cells, saying.others);
  return saying;
}

// A state with a known solution (one of its solutions), and footings for it, changing with the seed.
struct ClaimState {
  Position position;
  FullGrid solution;
  Ground ground;
  oracle::Rules rules;

  ClaimState(const Shape& shape, std::uint64_t seed) : position(shape), solution(shape) {
    Rng rng(seed * 0x9E37 + 5);
    solution = random_grid(shape, rng.next());
    const int fewer = rng.below(4) == 0 ? 1 + static_cast<int>(rng.below(3)) : 0;
    position = loosened_puzzle(solution, rng, fewer, static_cast<int>(rng.below(static_cast<std::uint32_t>(shape.side()))));
    if (rng.below(2) == 0) strike_at_random(position, rng, static_cast<int>(rng.below(60)), &solution);
    choose_footing(rng);
  }

 private:
  void add_house(int house) {
    ground.houses.emplace_back(house);
    rules.houses.push_back(house);
  }

  void choose_footing(Rng& rng) {
    const Shape& shape = position.shape();
    const std::uint32_t kind = rng.below(10);
    const std::uint32_t share = kind < 6 ? 100 : kind < 8 ? 70 : 20;
    for (int house = 0; house < shape.house_count(); ++house) {
      if (rng.below(100) < share) add_house(house);
    }
    ground.has_marks = rules.marks = rng.below(8) != 0;
    if (kind == 9 || kind == 7) add_balance(rng);
    if (kind == 8 || kind == 7) add_granted(rng);
  }

  void add_balance(Rng& rng) {
    const auto band = static_cast<int>(rng.below(static_cast<std::uint32_t>(position.shape().side())));
    const auto other = static_cast<int>(rng.below(static_cast<std::uint32_t>(position.shape().side())));
    std::vector<Weight> weights{{position.shape().row(band), 1}, {position.shape().column(other), 1}, {position.shape().box(band), -1}};
    if (rng.below(2) == 0) weights[0].weight = 2;
    ground.balances.push_back({"x", weights});
    rules.granted.push_back(balance_saying(position.shape(), weights));
  }

  // Sentences that are true in the solution.
  void add_granted(Rng& rng) {
    RandomSayings sayings(position.shape(), digits_of(solution), rng.next());
    for (int tries = 0; tries < 12 && ground.claims.size() < 2; ++tries) {
      const oracle::Saying saying = sayings.make(1);
      if (!oracle::is_so(saying, digits_of(solution))) continue;
      const auto claim = parse_claim(position, {}, oracle::text_of(saying, position.shape().side()));
      if (!claim) continue;
      ground.claims.push_back({static_cast<int>(ground.claims.size()) + 1, *claim});
      rules.granted.push_back(saying);
    }
  }
};

}  // namespace cp::support
