// SPDX-License-Identifier: Apache-2.0
// Random sentences about a grid: of every kind, half of them true in a given solution.
#pragma once

#include "base/rng.h"
#include "oracle/claim_oracle.h"

namespace cp::support {

class RandomSayings {
 public:
  // `solution`: the digits (from 1) of all cells.
  RandomSayings(const Shape& shape, std::vector<int> solution, std::uint64_t seed) : shape_(shape), solution_(std::move(solution)), rng_(seed) {}

  oracle::Saying make(int depth = 2) {
    const std::uint32_t kind = rng_.below(depth > 0 ? 15 : 11);
    oracle::Saying saying;
    saying.what = static_cast<What>(kind);
    switch (saying.what) {
      case What::kIs: return about(saying, 1, 1);
      case What::kIsNot: return about(saying, 1 + pick(2), 1);
      case What::kIn:
      case What::kNotIn: return about(saying, 1 + pick(3), 1 + pick(3));
      case What::kEqual:
      case What::kDifferent:
        saying.cells = cells(1);
        saying.others = {pick_near(saying.cells[0])};
        return saying;
      case What::kHold: return holding(saying);
      case What::kSurplus: return surplus(saying);
      case What::kExactly:
      case What::kAtLeast:
      case What::kAtMost: return counting(saying);
      default: break;
    }
    const int parts = saying.what == What::kNot ? 1 : saying.what == What::kIf ? 2 : 2 + pick(2);
    for (int i = 0; i < parts; ++i) saying.parts.push_back(make(depth - 1));
    return saying;
  }

 private:
  using What = oracle::Saying::What;

  int pick(int bound) { return static_cast<int>(rng_.below(static_cast<std::uint32_t>(bound))); }
  int pick_cell() { return pick(shape_.cell_count()); }
  // Often in a common house, so that there is something to prove.
  int pick_near(int cell) {
    if (pick(3) == 0) return pick_cell();
    std::vector<int> peers;
    for (const Cell peer : shape_.peers(Cell(cell))) peers.push_back(peer.index);
    return peers[static_cast<std::size_t>(pick(static_cast<int>(peers.size())))];
  }
  std::vector<int> cells(int count) {
    std::vector<int> list{pick_cell()};
    while (static_cast<int>(list.size()) < count) {
      const int next = pick_near(list.front());
      if (std::find(list.begin(), list.end(), next) == list.end()) list.push_back(next);
    }
    return list;
  }
  int digit_in(int cell) { return pick(3) == 0 ? 1 + pick(shape_.side()) : solution_[static_cast<std::size_t>(cell)]; }

  oracle::Saying about(oracle::Saying saying, int cell_count, int digit_count) {
    saying.cells = cells(cell_count);
    while (static_cast<int>(saying.digits.size()) < digit_count) {
      saying.digits.push_back(digit_in(saying.cells[static_cast<std::size_t>(pick(cell_count))]));
    }
    if ((saying.what == What::kIsNot || saying.what == What::kNotIn) && pick(2) == 0) {
      for (int& digit : saying.digits) digit = 1 + pick(shape_.side());
    }
    return saying;
  }
  oracle::Saying holding(oracle::Saying saying) {
    saying.cells = cells(2 + pick(3));
    for (const int cell : saying.cells) saying.digits.push_back(solution_[static_cast<std::size_t>(cell)]);
    if (pick(3) == 0) saying.digits.back() = 1 + pick(shape_.side());
    return saying;
  }
  // Houses against houses now and then: true by the rules. Otherwise two handfuls of cells.
  oracle::Saying surplus(oracle::Saying saying) {
    if (pick(2) == 0) {
      const auto add_house = [&](std::vector<int>& to) {
        for (const Cell cell : shape_.cells(House(pick(shape_.house_count())))) to.push_back(cell.index);
      };
      add_house(saying.cells);
      if (pick(2) == 0) {
        add_house(saying.cells);
        for (int digit = 1; digit <= shape_.side(); ++digit) saying.digits.push_back(digit);
      }
      add_house(saying.others);
      if (pick(4) == 0) std::swap(saying.cells.front(), saying.others.front());
      return saying;
    }
    const int size = 1 + pick(3);
    saying.others = cells(size);
    saying.cells = cells(size + 1);
    saying.digits = {digit_in(saying.cells.back())};
    return saying;
  }
  oracle::Saying counting(oracle::Saying saying) {
    saying.cells = cells(2 + pick(5));
    saying.digits = {digit_in(saying.cells[0])};
    if (pick(4) == 0) saying.digits.push_back(digit_in(saying.cells[1]));
    saying.number = pick(3);
    return saying;
  }

  const Shape& shape_;
  std::vector<int> solution_;
  Rng rng_;
};

}  // namespace cp::support
