// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

void note_once(Conclusions& conclusions, const std::set<Candidate>& struck) {
  if (!conclusions.contains({{}, struck})) note_struck(conclusions, struck);
}

bool see_each_other(const Position& position, Cell one, Cell other) {
  const auto ones = position.shape().houses_of(one);
  const auto others = position.shape().houses_of(other);
  return one != other && (ones[0] == others[0] || ones[1] == others[1] || ones[2] == others[2]);
}

std::set<Cell> places_in_grid(const Position& position, Digit digit) {
  std::set<Cell> places;
  for (const House house : houses_of_kind(position, HouseKind::kRow)) places.merge(places_of(position, house, {digit}));
  return places;
}

std::set<Cell> partners(const Position& position, Digit digit, Cell place) {
  std::set<Cell> found;
  for (const House house : position.shape().houses_of(place)) {
    const std::set<Cell> places = places_of(position, house, {digit});
    if (places.size() == 2) found.merge(minus(places, {place}));
  }
  return found;
}

std::set<Candidate> seen_from_both(const Position& position, Digit digit, Cell one, Cell other) {
  std::set<Candidate> seen;
  for (const Cell cell : places_in_grid(position, digit)) {
    if (see_each_other(position, cell, one) && see_each_other(position, cell, other)) seen.insert({cell, digit});
  }
  return seen;
}

}  // namespace cp::oracle
