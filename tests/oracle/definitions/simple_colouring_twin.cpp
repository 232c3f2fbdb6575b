// SPDX-License-Identifier: Apache-2.0
// A group of three places or more in two colours: what is outside and sees both falls; a colour that sees itself falls.
#include "oracle/definitions/plain_colours.h"

namespace cp::oracle {

Conclusions simple_colouring_twin(const Position& position) {
  Conclusions found;
  for (const Digit digit : all_digits(position)) {
    for (const auto& [alike, opposite] : plain_colours(position, digit)) {
      if (alike.size() + opposite.size() < 3) continue;
      if (is_in_sight(position, alike, alike)) note_once(found, candidates_there(position, alike, {digit}));
      std::set<Candidate> trapped;
      for (const Cell cell : minus(minus(places_in_grid(position, digit), alike), opposite)) {
        if (is_in_sight(position, {cell}, alike) && is_in_sight(position, {cell}, opposite)) trapped.insert({cell, digit});
      }
      note_once(found, trapped);
    }
  }
  return found;
}

}  // namespace cp::oracle
