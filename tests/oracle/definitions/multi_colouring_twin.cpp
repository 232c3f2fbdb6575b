// SPDX-License-Identifier: Apache-2.0
// Two groups of a digit in two colours each. Colours that see each other are not both true, so what sees both their
// opposites falls. A colour that sees both colours of another group falls.
#include "oracle/definitions/plain_colours.h"

namespace cp::oracle {

Conclusions multi_colouring_twin(const Position& position) {
  Conclusions found;
  for (const Digit digit : all_digits(position)) {
    const std::set<Colours> groups = plain_colours(position, digit);
    for (const Colours& one : groups) {
      for (const Colours& other : groups) {
        const bool is_same_group = one.alike == other.alike || one.alike == other.opposite;
        if (is_same_group || !is_in_sight(position, one.alike, other.alike)) continue;
        std::set<Candidate> struck;
        for (const Cell cell : places_in_grid(position, digit)) {
          if (is_in_sight(position, {cell}, one.opposite) && is_in_sight(position, {cell}, other.opposite)) struck.insert({cell, digit});
        }
        note_once(found, struck);
        if (is_in_sight(position, one.alike, other.opposite)) note_once(found, candidates_there(position, one.alike, {digit}));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
