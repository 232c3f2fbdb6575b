// SPDX-License-Identifier: Apache-2.0
// What can be weighed depends on the placed digits alone, so searches of positions that differ only in candidates
// weigh the same pairs. The distinct balances of the last position are kept for the next.
#pragma once

#include <array>
#include <optional>

#include "balance/distinct.h"

namespace cp {

class KeptBalances {
 public:
  // The same as DistinctBalances(position, most_slack, most_houses). Valid until the next call.
  const DistinctBalances& of(const Position& position, int most_slack, int most_houses);

  // How often that was not what the call before had asked for, and everything had to be weighed.
  [[nodiscard]] int weighed() const { return weighed_; }

 private:
  // All that the distinct balances depend on.
  struct Key {
    const Shape* shape = nullptr;
    int most_slack = 0;
    int most_houses = 0;
    std::array<std::int8_t, kMaxCells> digits{};  // by cell; -1 where none is placed

    friend bool operator==(const Key&, const Key&) = default;
  };
  Key key_;
  std::optional<DistinctBalances> balances_;
  int weighed_ = 0;
};

}  // namespace cp
