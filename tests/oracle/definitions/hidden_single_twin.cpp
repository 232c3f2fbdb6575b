// SPDX-License-Identifier: Apache-2.0
// A digit with exactly one place in a house goes there; one instance for each such house.
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {

Conclusions hidden_single_twin(const Position& position) {
  Conclusions found;
  for (const House house : all_houses(position)) {
    for (const Digit digit : all_digits(position)) {
      const std::set<Cell> places = places_of(position, house, {digit});
      if (places.size() == 1) found.insert({{{*places.begin(), digit}}, {}});
    }
  }
  return found;
}

}  // namespace cp::oracle
