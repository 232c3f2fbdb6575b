// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_supposing.h"

#include <map>

namespace cp::oracle {

namespace {

void place_singles(Position& position) {
  for (const House house : all_houses(position)) {
    for (const Cell cell : position.shape().cells(house)) {
      if (!position.is_placed(cell) && position.candidates(cell).size() == 1) position.place(cell, position.candidates(cell).lowest());
    }
    for (const Digit digit : all_digits(position)) {
      if (position.places(house, digit).size() == 1) position.place(position.places(house, digit).first(), digit);
    }
  }
}

// The digit leaves the rest of a house that holds all its places in another.
void strike_locked(Position& position) {
  for (const House base : all_houses(position)) {
    for (const Digit digit : all_digits(position)) {
      for (const House cover : all_houses(position)) {
        const CellSet places = position.places(base, digit);
        if (places.is_empty() || !places.is_subset_of(position.shape().cells(cover))) continue;
        for (const Cell cell : position.places(cover, digit) - places) position.eliminate({cell, digit});
      }
    }
  }
}

// Two cells of a house with two digits between them keep them for themselves, two digits with two cells between them also.
void strike_pairs(Position& position) {
  for (const House house : all_houses(position)) {
    for (const auto& cells : choices(open_cells(position, house), 2)) {
      const std::set<Digit> digits = digits_in(position, cells);
      if (digits.size() != 2) continue;
      for (const Candidate& each : candidates_there(position, minus(open_cells(position, house), cells), digits)) position.eliminate(each);
    }
    for (const auto& digits : choices(all_digits(position), 2)) {
      const std::set<Cell> cells = places_of(position, house, digits);
      const bool has_both = !position.places(house, *digits.begin()).is_empty() && !position.places(house, *digits.rbegin()).is_empty();
      if (cells.size() != 2 || !has_both) continue;
      for (const Candidate& each : candidates_there(position, cells, minus(all_digits(position), digits))) position.eliminate(each);
    }
  }
}

}  // namespace

Followed followed(const Position& position, bool with_small_sets) {
  Position now = position;
  for (int before = -1; before != now.candidate_count() + static_cast<int>(now.open().size()) && !now.has_clash();) {
    before = now.candidate_count() + static_cast<int>(now.open().size());
    place_singles(now);
    if (with_small_sets && !now.has_clash()) strike_locked(now);
    if (with_small_sets && !now.has_clash()) strike_pairs(now);
  }
  Followed end;
  end.is_impossible = now.has_clash();
  for (const Candidate& each : open_candidates(position)) {
    if (!now.has(each)) end.gone.insert(each);
  }
  return end;
}

Followed followed_from(const Position& position, Candidate supposed, bool with_small_sets) {
  Position placed = position;
  placed.place(supposed.cell, supposed.digit);
  Followed end = followed(placed, with_small_sets);
  for (const Candidate& each : open_candidates(position)) {
    if (each != supposed && exclude_each_other(position, each, supposed)) end.gone.insert(each);
  }
  return end;
}

std::set<std::set<Candidate>> cells_to_split(const Position& position) {
  std::set<std::set<Candidate>> facts;
  for (const Candidate& each : open_candidates(position)) facts.insert(candidates_there(position, {each.cell}, all_digits(position)));
  return facts;
}

std::set<std::set<Candidate>> houses_to_split(const Position& position) {
  std::set<std::set<Candidate>> facts;
  for (const House house : all_houses(position)) {
    for (const Digit digit : all_digits(position)) facts.insert(candidates_there(position, open_cells(position, house), {digit}));
  }
  return facts;
}

Conclusions forced_by_all(const Position& position, const std::set<std::set<Candidate>>& facts, bool with_small_sets, bool counts_impossible) {
  Conclusions found;
  const Followed without = followed(position, with_small_sets);
  std::map<Candidate, Followed> from;
  for (const Candidate& each : open_candidates(position)) from[each] = followed_from(position, each, with_small_sets);
  for (const std::set<Candidate>& fact : facts) {
    std::size_t possible = 0;
    std::map<Candidate, std::size_t> fallen_in;
    for (const Candidate& each : fact) {
      if (from[each].is_impossible) continue;
      ++possible;
      for (const Candidate& gone : from[each].gone) ++fallen_in[gone];
    }
    if (without.is_impossible || possible == 0 || (possible < fact.size() && !counts_impossible)) continue;
    for (const auto& [candidate, cases] : fallen_in) {
      if (cases == possible && !without.gone.contains(candidate)) note_as_new(found, {candidate});
    }
  }
  return found;
}

}  // namespace cp::oracle
