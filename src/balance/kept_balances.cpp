// SPDX-License-Identifier: Apache-2.0
#include "balance/kept_balances.h"

namespace cp {

const DistinctBalances& KeptBalances::of(const Position& position, int most_slack, int most_houses) {
  Key key{&position.shape(), most_slack, most_houses, {}};
  key.digits.fill(-1);
  for (const Cell cell : position.placed()) key.digits[cell.index] = static_cast<std::int8_t>(position.digit_at(cell)->index);
  if (!balances_ || !(key == key_)) {
    balances_.emplace(position, most_slack, most_houses);
    key_ = key;
    ++weighed_;
  }
  return *balances_;
}

}  // namespace cp
