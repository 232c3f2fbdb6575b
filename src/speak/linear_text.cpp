// SPDX-License-Identifier: Apache-2.0
#include "speak/linear_text.h"

#include <algorithm>
#include <cstdlib>

#include "base/text.h"
#include "speak/naming.h"

namespace cp {

namespace {

using Struck = std::vector<Candidate>;

std::string outcome(const Struck& struck, const Shape& shape) { return struck.empty() ? "nothing changes" : eliminations_in_words(shape, struck); }

// The facts that need a candidate each (bases) and those with room for one each (covers).
struct Account {
  std::vector<Constraint> bases;
  std::vector<Constraint> covers;
  bool has_equal_weights = true;  // every multiplier is 1 or -1
  int room = 0;                   // covers not used up by bases or placed digits
};

bool contains(const Constraint& constraint, Candidate candidate, const Shape& shape) {
  if (constraint.kind == Constraint::Kind::kCell) return constraint.cell() == candidate.cell;
  return constraint.digit == candidate.digit && shape.cells(constraint.house()).has(candidate.cell);
}

int coefficient(const LinearReason& reason, Candidate candidate, const Shape& shape) {
  int sum = 0;
  for (const LinearTerm& term : reason.terms) sum += contains(term.constraint, candidate, shape) ? term.multiplier : 0;
  return sum;
}

Account account_of(const LinearReason& reason, const Position& before) {
  Account account;
  for (const LinearTerm& term : reason.terms) {
    (term.multiplier < 0 ? account.bases : account.covers).push_back(term.constraint);
    account.has_equal_weights = account.has_equal_weights && std::abs(term.multiplier) == 1;
    account.room += term.multiplier;
  }
  for (const Cell cell : before.placed()) account.room -= coefficient(reason, {cell, *before.digit_at(cell)}, before.shape());
  return account;
}

bool are_all(const std::vector<Constraint>& facts, Constraint::Kind kind) {
  return !facts.empty() && std::all_of(facts.begin(), facts.end(), [kind](const Constraint& fact) { return fact.kind == kind; });
}

std::vector<House> houses_of(const std::vector<Constraint>& facts) {
  std::vector<House> houses;
  for (const Constraint& fact : facts) {
    if (fact.kind == Constraint::Kind::kHouse && std::find(houses.begin(), houses.end(), fact.house()) == houses.end()) {
      houses.push_back(fact.house());
    }
  }
  return houses;
}

DigitSet digits_of(const std::vector<Constraint>& facts) {
  DigitSet digits;
  for (const Constraint& fact : facts) {
    if (fact.kind == Constraint::Kind::kHouse) digits.add(fact.digit);
  }
  return digits;
}

CellSet cells_of(const std::vector<Constraint>& facts) {
  CellSet cells;
  for (const Constraint& fact : facts) {
    if (fact.kind == Constraint::Kind::kCell) cells.add(fact.cell());
  }
  return cells;
}

std::string naked_subset_text(const Account& account, const Struck& struck, const Shape& shape) {
  const CellSet cells = cells_of(account.bases);
  return cell_names(shape, cells) + " have only " + digit_names(digits_of(account.covers)) + " left between them, and they share " +
         house_names(shape, houses_of(account.covers)) + ". So nothing else in that house can be one of these digits: " + outcome(struck, shape) + ".";
}

std::string hidden_subset_text(const Account& account, const Struck& struck, const Shape& shape) {
  const CellSet cells = cells_of(account.covers);
  return "In " + house_names(shape, houses_of(account.bases)) + ", " + digit_names(digits_of(account.bases)) + " can only go into " +
         cell_names(shape, cells) + ". So these " + counted(cells.size(), "cell") + " hold nothing else: " + outcome(struck, shape) + ".";
}

// One digit, houses against houses: locked candidates and fish, with or without fins.
std::string one_digit_text(const Account& account, const LinearReason& reason, const Struck& struck, const Position& before) {
  const Shape& shape = before.shape();
  const Digit digit = account.bases[0].digit;
  const std::vector<House> bases = houses_of(account.bases);
  const std::vector<House> covers = houses_of(account.covers);
  const std::string base_names = house_names(shape, bases);
  const std::string cover_names = house_names(shape, covers);
  if (account.room == 0 && bases.size() == 1) {
    return "In " + base_names + ", " + digit_name(digit) + " can only go into " + cover_names + ": " +
           cell_names(shape, before.places(bases[0], digit)) + ". So " + outcome(struck, shape) + ".";
  }
  if (account.room == 0) {
    return "In " + base_names + ", every place for " + digit_name(digit) + " lies in " + cover_names + ". Each of these " +
           counted(static_cast<int>(covers.size()), "house") + " gets its " + digit_name(digit) + " there, so " + outcome(struck, shape) + ".";
  }
  const int taken = struck.empty() ? 2 : coefficient(reason, struck[0], shape);
  return capitalised(base_names) + " need " + counted(static_cast<int>(bases.size()), digit_name(digit)) + ", all within " + cover_names +
         ", which have room for " + spoken_number(static_cast<int>(covers.size())) + ". So there is room for only " +
         spoken_number(account.room) + " more, and " + a_digit(digit) + " where it would use up " + spoken_number(taken) +
         " cannot be: " + outcome(struck, shape) + ".";
}

// Some digits in some houses: "the 4 of row 2", "the 1s and 6s of rows 1 and 3".
struct DigitsOfHouses {
  DigitSet digits;
  std::vector<House> houses;

  [[nodiscard]] bool is_one() const { return digits.size() == 1 && houses.size() == 1; }
  [[nodiscard]] std::string words(const Shape& shape) const {
    std::vector<std::string> names;
    for (const Digit digit : digits) names.push_back(digit_name(digit) + (houses.size() == 1 ? "" : "s"));
    return "the " + listed(names) + " of " + house_names(shape, houses);
  }
};

// Digits that belong to the same houses go together.
std::vector<DigitsOfHouses> grouped_houses(const std::vector<Constraint>& facts) {
  std::vector<DigitsOfHouses> groups;
  for (const Digit digit : digits_of(facts)) {
    std::vector<House> houses;
    for (const Constraint& fact : facts) {
      if (fact.kind == Constraint::Kind::kHouse && fact.digit == digit) houses.push_back(fact.house());
    }
    const auto same = std::find_if(groups.begin(), groups.end(), [&houses](const DigitsOfHouses& group) { return group.houses == houses; });
    if (same == groups.end()) groups.push_back({DigitSet::of(digit), std::move(houses)});
    else same->digits.add(digit);
  }
  return groups;
}

// A list whose parts may themselves have "and" in them.
std::string long_list(const std::vector<std::string>& items) {
  return items.size() == 1 ? items[0] : joined({joined({items.begin(), items.end() - 1}, ", "), items.back()}, " and ");
}

// "the cells r1c2 and r3c4, the 4 of row 2 and the 7s of rows 1 and 3".
std::string facts_in_words(const std::vector<Constraint>& facts, const Shape& shape) {
  std::vector<std::string> items;
  const CellSet cells = cells_of(facts);
  if (!cells.is_empty()) items.push_back((cells.size() == 1 ? "the cell " : "the cells ") + cell_names(shape, cells));
  for (const DigitsOfHouses& group : grouped_houses(facts)) items.push_back(group.words(shape));
  return long_list(items);
}

// "r1c2 and r3c4 need a digit each, the 4 of row 2 needs a place".
std::string needs_in_words(const std::vector<Constraint>& facts, const Shape& shape) {
  std::vector<std::string> items;
  const CellSet cells = cells_of(facts);
  if (!cells.is_empty()) items.push_back(cell_names(shape, cells) + (cells.size() == 1 ? " needs a digit" : " need a digit each"));
  for (const DigitsOfHouses& group : grouped_houses(facts)) items.push_back(group.words(shape) + (group.is_one() ? " needs a place" : " need a place each"));
  return long_list(items);
}

std::string any_account_text(const Account& account, const Struck& struck, const Shape& shape) {
  if (account.bases.empty() || account.covers.empty()) return "Counting candidates: " + outcome(struck, shape) + ".";
  std::string text = needs_in_words(account.bases, shape);
  if (cells_of(account.bases).is_empty()) text = capitalised(std::move(text));
  const bool is_one = account.covers.size() == 1;
  text += ". Whatever " + std::string(account.bases.size() == 1 ? "it takes" : "they take") + " lies within " + facts_in_words(account.covers, shape) +
          (is_one ? ", which can be taken once. " : ", and each of these can be taken once. ");
  if (!account.has_equal_weights) text += "Some of them count more than once. ";
  if (account.room <= 0) return text + "So nothing else can be taken there: " + outcome(struck, shape) + ".";
  return text + "Only " + spoken_number(account.room) + (account.room == 1 ? " is" : " are") + " to spare, and the following would take more than that: " + outcome(struck, shape) + ".";
}

}  // namespace

std::string linear_text(const LinearReason& reason, const Struck& struck, const Position& before) {
  const Shape& shape = before.shape();
  const Account account = account_of(reason, before);
  using Kind = Constraint::Kind;
  const bool is_exact = account.has_equal_weights && account.room == 0;
  if (is_exact && are_all(account.bases, Kind::kCell) && are_all(account.covers, Kind::kHouse) && houses_of(account.covers).size() == 1 &&
      account.bases.size() > 1) {
    return naked_subset_text(account, struck, shape);
  }
  if (is_exact && are_all(account.bases, Kind::kHouse) && are_all(account.covers, Kind::kCell) && houses_of(account.bases).size() == 1 &&
      account.bases.size() > 1) {
    return hidden_subset_text(account, struck, shape);
  }
  const bool is_one_digit = are_all(account.bases, Kind::kHouse) && are_all(account.covers, Kind::kHouse) &&
                            digits_of(account.bases).size() == 1 && digits_of(account.bases) == digits_of(account.covers);
  if (account.has_equal_weights && account.room >= 0 && is_one_digit) return one_digit_text(account, reason, struck, before);
  return any_account_text(account, struck, shape);
}

std::string impossible_text(const LinearReason& reason, const Position& before) {
  const Shape& shape = before.shape();
  const Account account = account_of(reason, before);
  DigitSet left;
  for (const Constraint& base : account.bases) {
    if (base.kind == Constraint::Kind::kCell) left |= before.candidates(base.cell());
  }
  if (are_all(account.bases, Constraint::Kind::kCell) && are_all(account.covers, Constraint::Kind::kHouse) && houses_of(account.covers).size() == 1) {
    return cell_names(shape, cells_of(account.bases)) + " share " + house_names(shape, houses_of(account.covers)) + " and have only " + digit_names(left) +
           " left between them: too few digits for " + counted(static_cast<int>(account.bases.size()), "cell");
  }
  return facts_in_words(account.bases, shape) + " need " + spoken_number(static_cast<int>(account.bases.size())) + " candidates, and all they have lie within " +
         (account.covers.empty() ? "nothing" : facts_in_words(account.covers, shape)) + ", with room for fewer";
}

}  // namespace cp
