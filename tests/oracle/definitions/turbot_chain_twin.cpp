// SPDX-License-Identifier: Apache-2.0
// Four places of a digit in a row: partners, seeing each other, partners. What sees the first and the last falls.
#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

Conclusions turbot_chain_twin(const Position& position) {
  Conclusions found;
  for (const Digit digit : all_digits(position)) {
    const std::set<Cell> places = places_in_grid(position, digit);
    for (const Cell first : places) {
      for (const Cell second : partners(position, digit, first)) {
        for (const Cell third : places) {
          if (third == first || !see_each_other(position, second, third)) continue;
          for (const Cell fourth : partners(position, digit, third)) {
            if (fourth != first && fourth != second) note_once(found, seen_from_both(position, digit, first, fourth));
          }
        }
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
