// SPDX-License-Identifier: Apache-2.0
#include "speak/speaker.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "base/text.h"
#include "speak/certificate_words.h"
#include "speak/naming.h"
#include "speak/scales.h"
#include "speak/step_text.h"

namespace cp {

namespace {

constexpr int kNamed = 3;         // so many cells of one house are named besides
constexpr int kListed = 2;        // so many cells without a common house are simply named
constexpr int kMostNamedDigits = 6;  // more known digits are told by where they stand
constexpr std::size_t kGroups = 5;  // more houses than this are not listed

// The plainest house that holds all these cells: boxes are seen first.
std::optional<House> common_house(const Shape& shape, const CellSet& cells) {
  for (const HouseKind kind : {HouseKind::kBox, HouseKind::kRow, HouseKind::kColumn}) {
    for (int i = 0; i < shape.house_count(); ++i) {
      if (shape.kind(House(i)) == kind && cells.is_subset_of(shape.cells(House(i)))) return House(i);
    }
  }
  return std::nullopt;
}

// The cells by houses of one kind.
std::vector<House> houses_met(const Shape& shape, const CellSet& cells, HouseKind kind) {
  std::vector<House> met;
  for (int i = 0; i < shape.house_count(); ++i) {
    if (shape.kind(House(i)) == kind && cells.meets(shape.cells(House(i)))) met.emplace_back(i);
  }
  return met;
}

// By the kind of house that needs the fewest groups, boxes first.
std::vector<House> fewest_houses(const Shape& shape, const CellSet& cells) {
  std::vector<House> best;
  for (const HouseKind kind : {HouseKind::kBox, HouseKind::kRow, HouseKind::kColumn}) {
    std::vector<House> met = houses_met(shape, cells, kind);
    if (best.empty() || met.size() < best.size()) best = std::move(met);
  }
  return best;
}

std::string key_of(HouseKind kind, bool is_many) {
  static constexpr std::array<std::string_view, 3> kOne = {"house.row", "house.column", "house.box"};
  static constexpr std::array<std::string_view, 3> kMany = {"house.rows", "house.columns", "house.boxes"};
  return std::string((is_many ? kMany : kOne)[static_cast<std::size_t>(kind)]);
}

}  // namespace

std::string Speaker::houses_of_kind(const Shape& shape, const std::vector<House>& houses, HouseKind kind) const {
  std::vector<std::string> numbers;
  for (int i = 0; i < shape.house_count(); ++i) {
    const auto times = static_cast<int>(std::count(houses.begin(), houses.end(), House(i)));
    if (shape.kind(House(i)) != kind || times == 0) continue;
    std::string number = to_text(shape.number(House(i)) + 1);
    if (times > 1) number = words_.say("house.twice", {{"n", number}, {"times", times}});
    numbers.push_back(std::move(number));
  }
  if (numbers.empty()) return {};
  return words_.say(key_of(kind, numbers.size() > 1), {{"n", numbers.front()}, {"list", words_.list(numbers)}});
}

std::string Speaker::houses(const Shape& shape, const std::vector<House>& houses) const {
  if (words_.is_english()) return house_names(shape, houses);
  std::string text;
  for (const HouseKind kind : {HouseKind::kRow, HouseKind::kColumn, HouseKind::kBox}) {
    const std::string group = houses_of_kind(shape, houses, kind);
    if (group.empty()) continue;
    text = text.empty() ? group : words_.say("house.with", {{"first", text}, {"second", group}});
  }
  return text;
}

std::string Speaker::cell_list(const Shape& shape, const CellSet& cells) const {
  std::vector<std::string> names;
  for (const Cell cell : cells) names.push_back(shape.name_of(cell));
  return words_.list(names);
}

std::string Speaker::cells(const Shape& shape, const CellSet& cells, const CellSet& open) const {
  const int count = cells.size();
  if (count == 0) return words_.say("number.0");
  if (const auto house = common_house(shape, cells); house && count > 1) {
    const bool is_all = cells == (open & shape.cells(*house));
    const bool is_named = count <= kNamed;
    const std::string key = std::string(is_all ? "cells.all" : "cells.some") + (is_named ? ".named" : "");
    return words_.say(key, {{"n", count}, {"house", houses_of_kind(shape, {*house}, shape.kind(*house))}, {"names", cell_list(shape, cells)}});
  }
  if (count <= kListed) return cell_list(shape, cells);
  const std::vector<House> groups = fewest_houses(shape, cells);
  if (groups.size() > kGroups || static_cast<int>(groups.size()) == count) {
    return count <= 2 * kNamed ? cell_list(shape, cells) : words_.say("cells.count", {{"n", count}});
  }
  const int first = (cells & shape.cells(groups.front())).size();
  const bool is_even = first > 1 && std::all_of(groups.begin(), groups.end(), [&](House group) { return (cells & shape.cells(group)).size() == first; });
  if (is_even) return words_.say("cells.each", {{"n", first}, {"houses", houses_of_kind(shape, groups, shape.kind(groups.front()))}});
  std::vector<std::string> items;
  bool has_said_cells = false;
  for (const House group : groups) {
    const CellSet inside = cells & shape.cells(group);
    if (inside.size() == 1) {
      items.push_back(shape.name_of(inside.first()));
      continue;
    }
    items.push_back(words_.say(has_said_cells ? "cells.more" : "cells.group", {{"n", inside.size()}, {"house", houses_of_kind(shape, {group}, shape.kind(group))}}));
    has_said_cells = true;
  }
  return words_.list(items);
}

std::string Speaker::copies(const Shape& shape, const DigitCounts& counts) const {
  std::vector<std::string> items;
  for (const Digit digit : shape.digits()) {
    const int count = counts[digit.index];
    if (count > 0) items.push_back(words_.say(count == 1 ? "copies.one" : "copies.many", {{"n", count}, {"d", digit_name(digit)}}));
  }
  return words_.list(items);
}

std::string Speaker::digits(const Shape& shape, const DigitCounts& counts) const {
  std::vector<std::string> items;
  for (const Digit digit : shape.digits()) items.insert(items.end(), static_cast<std::size_t>(std::max(counts[digit.index], 0)), digit_name(digit));
  return words_.list(items);
}

std::string Speaker::digits(DigitSet digits) const {
  std::vector<std::string> items;
  for (const Digit digit : digits) items.push_back(digit_name(digit));
  return words_.list(items);
}

std::string Speaker::falls(const Shape& shape, const std::vector<Candidate>& eliminations) const {
  if (words_.is_english()) return eliminations_in_words(shape, eliminations);
  std::vector<std::pair<CellSet, DigitSet>> losses;
  for (const Digit digit : shape.digits()) {
    CellSet cells;
    for (const Candidate& gone : eliminations) {
      if (gone.digit == digit) cells.add(gone.cell);
    }
    if (cells.is_empty()) continue;
    const auto known = std::find_if(losses.begin(), losses.end(), [&cells](const auto& loss) { return loss.first == cells; });
    if (known == losses.end()) losses.emplace_back(cells, DigitSet::of(digit));
    else known->second.add(digit);
  }
  std::vector<std::string> items;
  for (const auto& [cells, gone] : losses) {
    items.push_back(words_.say(gone.size() == 1 ? "falls.one" : "falls.more", {{"digits", digits(gone)}, {"cells", cell_list(shape, cells)}}));
  }
  return joined(items, words_.say("falls.join") + " ");
}

std::string Speaker::values(const Shape& shape, const std::vector<Candidate>& placements) const {
  std::vector<std::string> items;
  for (const Candidate& placed : placements) items.push_back(words_.say("is.value", {{"cell", shape.name_of(placed.cell)}, {"d", digit_name(placed.digit)}}));
  return words_.list(items);
}

std::string Speaker::technique(std::string_view id, std::string_view catalogue_name) const {
  const std::string key = "technique." + std::string(id);
  return words_.has(key) ? words_.say(key) : std::string(catalogue_name);
}

std::string Speaker::step(const Step& step, const Position& before, std::string_view catalogue_name) const {
  if (words_.is_english()) return step_text(step, before);
  const Shape& shape = before.shape();
  const std::string value = step.placements.empty() ? std::string() : values(shape, step.placements);
  if (const auto* lone = std::get_if<LoneReason>(&step.reason); lone != nullptr && !step.placements.empty()) {
    const std::string digit = digit_name(step.placements.front().digit);
    if (lone->constraint.kind == Constraint::Kind::kCell) return words_.say("step.cell", {{"cell", shape.name_of(lone->constraint.cell())}, {"d", digit}, {"value", value}});
    return words_.say("step.house", {{"house", houses(shape, {lone->constraint.house()})}, {"d", digit}, {"value", value}});
  }
  const std::string says = step.eliminations.empty() ? value : falls(shape, step.eliminations);
  if (const auto* balance = std::get_if<BalanceReason>(&step.reason)) {
    const Scales scales = lay_out(*balance, before);
    return words_.say("step.balance", {{"left", capitalised(houses(shape, scales.left.houses))}, {"right", houses(shape, scales.right.houses)}, {"falls", says}});
  }
  const std::string name = technique(step.technique, catalogue_name);
  if (const auto* argued = std::get_if<ArgumentReason>(&step.reason)) return words_.say("step.argument", {{"name", name}, {"told", argument(*argued, step.eliminations, before)}});
  if (const auto* linear = std::get_if<LinearReason>(&step.reason)) {
    if (const std::string where = bases(shape, linear->terms); !where.empty()) return words_.say("step.pattern.in", {{"name", name}, {"where", where}, {"falls", says}});
  }
  return words_.say("step.pattern", {{"name", name}, {"falls", says}});
}

std::string Speaker::known_digits(const Shape& shape, const CellSet& known, const std::vector<CertificateFact>& facts) const {
  CellSet in_houses;
  CellSet in_remainders;
  int balances = 0;
  for (const CertificateFact& fact : facts) {
    if (fact.kind == CertificateFact::Kind::kHouse) in_houses |= shape.cells(fact.house);
    if (fact.kind != CertificateFact::Kind::kBalance) continue;
    ++balances;
    for (const Cell cell : shape.all_cells()) {
      int weight = 0;
      for (const Weight& each : fact.weights) weight += shape.cells(each.house).has(cell) ? each.weight : 0;
      if (weight != 0) in_remainders.add(cell);
    }
  }
  if (known.is_subset_of(in_remainders)) return words_.say("fact.digits.remainders", {{"n", balances}});
  if (known.is_subset_of(in_houses)) return words_.say("fact.digits.houses");
  return words_.say("fact.digits.count", {{"n", known.size()}});
}

std::string Speaker::facts(const Shape& shape, const std::vector<CertificateFact>& facts) const {
  CellSet known;
  for (const CertificateFact& fact : facts) {
    if (fact.kind == CertificateFact::Kind::kMarks && fact.digits.size() == 1) known.add(fact.cell);
  }
  if (known.size() <= kMostNamedDigits) return facts_by_name(shape, facts);
  std::vector<CertificateFact> others;
  std::copy_if(facts.begin(), facts.end(), std::back_inserter(others), [&known](const CertificateFact& fact) { return fact.kind != CertificateFact::Kind::kMarks || !known.has(fact.cell); });
  const std::string digits = known_digits(shape, known, facts);
  return others.empty() ? digits : words_.say("fact.digits.besides", {{"facts", facts_by_name(shape, others)}, {"digits", digits}});
}

std::string Speaker::facts_by_name(const Shape& shape, const std::vector<CertificateFact>& facts) const {
  if (words_.is_english()) return facts_in_words(shape, facts);
  std::vector<House> named;
  CellSet marks;
  CellSet digits;
  std::vector<std::string> items;
  std::vector<std::string> claims;
  for (const CertificateFact& fact : facts) {
    if (fact.kind == CertificateFact::Kind::kHouse) named.push_back(fact.house);
    if (fact.kind == CertificateFact::Kind::kMarks) (fact.digits.size() == 1 ? digits : marks).add(fact.cell);
    if (fact.kind == CertificateFact::Kind::kBalance) items.push_back(words_.say("fact.balance", {{"name", fact.name}}));
    if (fact.kind == CertificateFact::Kind::kClaim) claims.push_back(fact.name);
  }
  if (!named.empty()) items.insert(items.begin(), houses(shape, named));
  if (!digits.is_empty()) items.push_back(words_.say("fact.digits.named", {{"n", digits.size()}, {"cells", cell_list(shape, digits)}}));
  if (!marks.is_empty()) items.push_back(words_.say("fact.marks", {{"cells", cell_list(shape, marks)}}));
  if (!claims.empty()) items.push_back(words_.say("fact.claim", {{"n", static_cast<int>(claims.size())}, {"list", words_.list(claims)}}));
  return words_.list(items);
}

}  // namespace cp
