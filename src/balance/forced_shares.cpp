// SPDX-License-Identifier: Apache-2.0
#include "balance/forced_shares.h"

#include <algorithm>

namespace cp {

namespace {

struct Family {
  std::vector<House> houses;
  int copies = 0;

  void add(House house, int count) {
    houses.push_back(house);
    copies += count;
  }
  void add(const Family& other) {
    houses.insert(houses.end(), other.houses.begin(), other.houses.end());
    copies += other.copies;
  }
};

class Inside {
 public:
  Inside(const Position& position, const Weighing& weighing, Digit digit, const CellSet& region)
      : shape_(position.shape()), copies_(static_cast<std::size_t>(shape_.house_count())) {
    const CellSet& places = position.places(digit);
    const CellSet outside = places - region;
    for (int i = 0; i < shape_.house_count(); ++i) {
      const CellSet& cells = shape_.cells(House(i));
      if (!places.meets(cells) || outside.meets(cells)) continue;
      copies_[static_cast<std::size_t>(i)] = least_multiplicity(weighing, places & cells);
      any_ = true;
    }
  }

  // The family with the most copies; empty when no house lies inside.
  [[nodiscard]] Family best() const {
    if (!any_) return {};
    const int side = shape_.side();
    const Family rows = range(0, side, 1);
    const Family columns = range(side, side, 1);
    const Family boxes = range(2 * side, side, 1);
    Family bands;
    const int per_band = shape_.box_rows();
    for (int band = 0; band < shape_.band_count(); ++band) {
      bands.add(larger(range(band * per_band, per_band, 1), range(2 * side + band * shape_.stack_count(), shape_.stack_count(), 1)));
    }
    Family stacks;
    const int per_stack = shape_.box_columns();
    for (int stack = 0; stack < shape_.stack_count(); ++stack) {
      stacks.add(larger(range(side + stack * per_stack, per_stack, 1), range(2 * side + stack, shape_.band_count(), shape_.stack_count())));
    }
    Family best = larger(larger(larger(larger(rows, columns), boxes), bands), stacks);
    std::sort(best.houses.begin(), best.houses.end());
    return best;
  }

 private:
  static int least_multiplicity(const Weighing& weighing, const CellSet& cells) {
    if (weighing.layers.empty()) return 1;
    int least = weighing.multiplicity(cells.first());
    for (const Cell cell : cells) least = std::min(least, weighing.multiplicity(cell));
    return least;
  }
  static const Family& larger(const Family& a, const Family& b) { return b.copies > a.copies ? b : a; }
  [[nodiscard]] Family range(int first, int count, int stride) const {
    Family family;
    for (int i = 0; i < count; ++i) {
      const int house = first + i * stride;
      const int copies = copies_[static_cast<std::size_t>(house)];
      if (copies > 0) family.add(House(house), copies);
    }
    return family;
  }

  const Shape& shape_;
  std::vector<int> copies_;  // by house: copies it is sure to put into the region, 0 when it does not lie inside
  bool any_ = false;
};

}  // namespace

ForcedShares forced_shares(const Position& position, const Weighing& weighing) {
  ForcedShares shares;
  const CellSet both = weighing.open_left | weighing.open_right;
  for (const Digit digit : position.shape().digits()) {
    const int asked = weighing.asked_left(digit) + weighing.asked_right(digit);
    int& least = shares.least[digit.index];
    ForcedCopies witness{digit, Pan::kLeft, {}};
    const auto consider = [&](Pan pan, const CellSet& region) {
      const Family family = Inside(position, weighing, digit, region).best();
      int share = 0;
      if (pan == Pan::kLeft) share = family.copies - weighing.asked_left(digit);
      if (pan == Pan::kRight) share = family.copies - weighing.asked_right(digit);
      if (pan == Pan::kBoth) share = (family.copies - asked + 1) / 2;
      if (share <= least) return;
      least = share;
      witness.pan = pan;
      witness.houses = family.houses;
    };
    consider(Pan::kLeft, weighing.open_left);
    consider(Pan::kRight, weighing.open_right);
    consider(Pan::kBoth, both);
    if (least > 0) shares.copies.push_back(witness);
    shares.total += least;
  }
  return shares;
}

}  // namespace cp
