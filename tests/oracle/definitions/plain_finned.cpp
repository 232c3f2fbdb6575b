// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_finned.h"

#include <algorithm>
#include <map>

namespace cp::oracle {

namespace {

constexpr std::size_t kBoxes = 2;  // where the box stands among the houses of a cell

// Bases with covers: what they strike out, if they are a finned fish of that kind.
std::set<Candidate> struck_by(const Position& position, Digit digit, const std::set<House>& bases, const std::set<House>& covers, std::size_t along, bool is_whole) {
  std::map<House, std::size_t> kept;
  for (const House house : bases) kept[house] = 0;
  for (const House house : covers) kept[house] = 0;
  std::set<House> fin_boxes;
  std::set<Candidate> struck;
  for (const Cell cell : places_in_grid(position, digit)) {
    const auto houses = position.shape().houses_of(cell);
    const bool is_covered = covers.contains(houses[1 - along]);
    if (!bases.contains(houses[along])) continue;
    if (!is_covered) fin_boxes.insert(houses[kBoxes]);
    if (is_covered) ++kept[houses[along]], ++kept[houses[1 - along]];
  }
  std::size_t fewest = position.shape().side();
  for (const auto& [house, count] : kept) fewest = std::min(fewest, count);
  if (fin_boxes.size() != 1 || fewest == 0 || is_whole != (fewest >= 2)) return {};
  for (const Cell cell : places_of(position, *fin_boxes.begin(), {digit})) {
    const auto houses = position.shape().houses_of(cell);
    if (covers.contains(houses[1 - along]) && !bases.contains(houses[along])) struck.insert({cell, digit});
  }
  return struck;
}

}  // namespace

Conclusions plain_finned(const Position& position, std::size_t size, bool is_whole) {
  Conclusions found;
  const auto most_lines = size + static_cast<std::size_t>(std::max(position.shape().box_rows(), position.shape().box_columns()));
  for (const Digit digit : all_digits(position)) {
    for (const std::size_t along : {0U, 1U}) {
      std::set<House> lines;
      for (const House house : houses_of_kind(position, along == 0 ? HouseKind::kRow : HouseKind::kColumn)) {
        if (places_of(position, house, {digit}).size() >= 2) lines.insert(house);
      }
      for (const std::set<House>& bases : choices(lines, size)) {
        std::set<House> crossing;
        for (const House base : bases) {
          for (const Cell cell : places_of(position, base, {digit})) crossing.insert(position.shape().houses_of(cell)[1 - along]);
        }
        if (bases.size() != size || crossing.size() > most_lines) continue;  // more than a box of fins
        for (const std::set<House>& covers : choices(crossing, size)) note_once(found, struck_by(position, digit, bases, covers, along, is_whole));
      }
    }
  }
  return found;
}

}  // namespace cp::oracle
