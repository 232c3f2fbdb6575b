// SPDX-License-Identifier: Apache-2.0
// Words for writing down what a technique is, slowly and plainly, with sets and loops. The twins in this folder use
// these and grid only; they share nothing with src/deduce. Each lists what every instance concludes, one entry each.
#pragma once

#include <set>
#include <utility>
#include <vector>

#include "grid/position.h"

namespace cp::oracle {

// What one instance says: digits it places and candidates it strikes out.
struct Conclusion {
  std::set<Candidate> placed;
  std::set<Candidate> struck;

  friend auto operator<=>(const Conclusion&, const Conclusion&) = default;
};

// All instances of a technique; equal conclusions of different instances are all there.
using Conclusions = std::multiset<Conclusion>;

// The open cells of a house.
inline std::set<Cell> open_cells(const Position& position, House house) {
  std::set<Cell> cells;
  for (const Cell cell : position.shape().cells(house)) {
    if (!position.is_placed(cell)) cells.insert(cell);
  }
  return cells;
}

// The candidates of some open cells together.
inline std::set<Digit> digits_in(const Position& position, const std::set<Cell>& cells) {
  std::set<Digit> digits;
  for (const Cell cell : cells) {
    for (const Digit digit : position.candidates(cell)) digits.insert(digit);
  }
  return digits;
}

// The open cells of a house that can hold one of the digits.
inline std::set<Cell> places_of(const Position& position, House house, const std::set<Digit>& digits) {
  std::set<Cell> cells;
  for (const Cell cell : open_cells(position, house)) {
    for (const Digit digit : digits) {
      if (position.candidates(cell).has(digit)) cells.insert(cell);
    }
  }
  return cells;
}

// The digits of the grid; the houses of one kind.
inline std::set<Digit> all_digits(const Position& position) {
  std::set<Digit> digits;
  for (int i = 0; i < position.shape().side(); ++i) digits.insert(Digit(i));
  return digits;
}
inline std::set<House> houses_of_kind(const Position& position, HouseKind kind) {
  std::set<House> houses;
  for (int i = 0; i < position.shape().house_count(); ++i) {
    if (position.shape().kind(House(i)) == kind) houses.insert(House(i));
  }
  return houses;
}
inline std::set<House> all_houses(const Position& position) {
  std::set<House> houses;
  for (int i = 0; i < position.shape().house_count(); ++i) houses.insert(House(i));
  return houses;
}

// Every way to choose `size` of the items.
template <typename Item>
std::vector<std::set<Item>> choices(const std::set<Item>& items, std::size_t size) {
  std::vector<std::set<Item>> found = {{}};
  for (const Item& item : items) {
    const std::size_t before = found.size();
    for (std::size_t i = 0; i < before; ++i) {
      if (found[i].size() == size) continue;
      found.push_back(found[i]);
      found.back().insert(item);
    }
  }
  std::erase_if(found, [&](const std::set<Item>& chosen) { return chosen.size() != size; });
  return found;
}

// Items of a that are not in b.
template <typename Item>
std::set<Item> minus(std::set<Item> a, const std::set<Item>& b) {
  for (const Item& item : b) a.erase(item);
  return a;
}

// Of these cells and digits, the candidates that are there.
inline std::set<Candidate> candidates_there(const Position& position, const std::set<Cell>& cells, const std::set<Digit>& digits) {
  std::set<Candidate> there;
  for (const Cell cell : cells) {
    for (const Digit digit : digits) {
      if (!position.is_placed(cell) && position.has({cell, digit})) there.insert({cell, digit});
    }
  }
  return there;
}

// Notes an instance that strikes out these candidates, if there are any.
inline void note_struck(Conclusions& conclusions, const std::set<Candidate>& struck) {
  if (!struck.empty()) conclusions.insert({{}, struck});
}

}  // namespace cp::oracle
