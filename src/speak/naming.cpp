// SPDX-License-Identifier: Apache-2.0
#include "speak/naming.h"

#include <utility>

#include "base/text.h"

namespace cp {

std::string cell_names(const Shape& shape, const CellSet& cells, std::string_view last_word) {
  std::vector<std::string> names;
  for (const Cell cell : cells) names.push_back(shape.name_of(cell));
  return listed(names, last_word);
}

std::string cells_in_short(const Shape& shape, const CellSet& cells, const CellSet& open, int longest_list) {
  if (cells.size() <= longest_list) return cell_names(shape, cells);
  for (int i = 0; i < shape.house_count(); ++i) {
    const House house(i);
    if (!cells.is_subset_of(shape.cells(house))) continue;
    const bool is_all = cells == (open & shape.cells(house));
    return (is_all ? "all " : "") + counted(cells.size(), is_all ? "open cell" : "cell") + " of " + shape.long_name_of(house);
  }
  return counted(cells.size(), "cell");
}

namespace {

// "row 3" or "rows 1 and 2" for the houses of one kind; empty when there are none.
std::string houses_of_kind(const Shape& shape, const std::vector<House>& houses, HouseKind kind) {
  static constexpr std::array<std::string_view, 3> kOne = {"row ", "column ", "box "};
  static constexpr std::array<std::string_view, 3> kMany = {"rows ", "columns ", "boxes "};
  std::vector<std::string> numbers;
  for (int i = 0; i < shape.house_count(); ++i) {
    const House house(i);
    if (shape.kind(house) != kind) continue;
    int times = 0;
    for (const House listed_house : houses) times += listed_house == house ? 1 : 0;
    if (times == 0) continue;
    std::string number = to_text(shape.number(house) + 1);
    if (times == 2) number += " (counted twice)";
    if (times > 2) number += " (counted " + spoken_number(times) + " times)";
    numbers.push_back(std::move(number));
  }
  if (numbers.empty()) return {};
  const auto& words = numbers.size() == 1 ? kOne : kMany;
  return std::string(words[static_cast<std::size_t>(kind)]) + listed(numbers);
}

}  // namespace

std::string house_names(const Shape& shape, const std::vector<House>& houses) {
  std::vector<std::string> groups;
  bool is_each_single = true;
  for (const HouseKind kind : {HouseKind::kRow, HouseKind::kColumn, HouseKind::kBox}) {
    std::string group = houses_of_kind(shape, houses, kind);
    if (group.empty()) continue;
    is_each_single = is_each_single && group.find(" and ") == std::string::npos;
    groups.push_back(std::move(group));
  }
  if (is_each_single) return listed(groups);
  std::string text = groups[0];
  for (std::size_t i = 1; i < groups.size(); ++i) text += (i == 1 ? " with " : " and with ") + groups[i];
  return text;
}

std::string digit_names(DigitSet digits, std::string_view last_word) {
  std::vector<std::string> names;
  for (const Digit digit : digits) names.push_back(digit_name(digit));
  return listed(names, last_word);
}

std::string digit_name(Digit digit) { return std::string(1, Shape::name_of(digit)); }

std::string a_digit(Digit digit) {
  const char name = Shape::name_of(digit);
  const bool is_an = name == '8' || name == 'A' || name == 'E' || name == 'F';
  return (is_an ? "an " : "a ") + digit_name(digit);
}

std::string copies_in_words(const DigitCounts& counts, const Shape& shape, std::string_view word) {
  std::vector<std::string> items;
  for (const Digit digit : shape.digits()) {
    const int copies = counts[digit.index];
    if (copies <= 0) continue;
    std::string item = spoken_number(copies) + " ";
    if (!word.empty()) item.append(word).append(" ");
    items.push_back(item + digit_name(digit) + (copies == 1 ? "" : "s"));
  }
  return listed(items);
}

std::string digits_in_full(const DigitCounts& counts, const Shape& shape) {
  std::vector<std::string> items;
  for (const Digit digit : shape.digits()) {
    for (int i = 0; i < counts[digit.index]; ++i) items.push_back(digit_name(digit));
  }
  return listed(items);
}

std::string digit_range(const Shape& shape) { return "1 to " + digit_name(Digit(shape.side() - 1)); }

namespace {

// One entry a group: digits that leave the same cells, or cells that lose the same digits.
struct Loss {
  DigitSet digits;
  CellSet cells;
};

std::vector<Loss> losses_by_digit(const Shape& shape, const std::vector<Candidate>& eliminations) {
  std::vector<Loss> losses;
  for (const Digit digit : shape.digits()) {
    CellSet cells;
    for (const Candidate& gone : eliminations) {
      if (gone.digit == digit) cells.add(gone.cell);
    }
    if (cells.is_empty()) continue;
    bool is_known = false;
    for (Loss& loss : losses) {
      if (loss.cells == cells && !is_known) {
        loss.digits.add(digit);
        is_known = true;
      }
    }
    if (!is_known) losses.push_back({DigitSet::of(digit), cells});
  }
  return losses;
}

std::vector<Loss> losses_by_cell(const Shape& shape, const std::vector<Candidate>& eliminations) {
  std::vector<Loss> losses;
  for (const Cell cell : shape.all_cells()) {
    DigitSet digits;
    for (const Candidate& gone : eliminations) {
      if (gone.cell == cell) digits.add(gone.digit);
    }
    if (digits.is_empty()) continue;
    bool is_known = false;
    for (Loss& loss : losses) {
      if (loss.digits == digits && !is_known) {
        loss.cells.add(cell);
        is_known = true;
      }
    }
    if (!is_known) losses.push_back({digits, CellSet::of(cell)});
  }
  return losses;
}

}  // namespace

std::string eliminations_in_words(const Shape& shape, const std::vector<Candidate>& eliminations) {
  const std::vector<Loss> by_digit = losses_by_digit(shape, eliminations);
  const std::vector<Loss> by_cell = losses_by_cell(shape, eliminations);
  std::vector<std::string> pieces;
  if (by_digit.size() <= by_cell.size()) {
    for (const Loss& loss : by_digit) {
      pieces.push_back(digit_names(loss.digits) + (loss.digits.size() == 1 ? " leaves " : " leave ") + cell_names(shape, loss.cells));
    }
  } else {
    for (const Loss& loss : by_cell) {
      pieces.push_back(cell_names(shape, loss.cells) + (loss.cells.size() == 1 ? " loses " : " lose ") + digit_names(loss.digits));
    }
  }
  return joined(pieces, "; ");
}

std::string placements_in_words(const Shape& shape, const std::vector<Candidate>& placements) {
  std::vector<std::string> pieces;
  for (const Candidate& placed : placements) pieces.push_back(shape.name_of(placed.cell) + " is " + digit_name(placed.digit));
  return listed(pieces);
}

}  // namespace cp
