// SPDX-License-Identifier: Apache-2.0
#include "claim/word_reader.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/text.h"

namespace cp {

namespace {

constexpr int kDeepest = 60;
constexpr int kMostTimes = 99;
constexpr std::array<std::string_view, 10> kNumbers = {"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"};
// Words after which a group of cells has ended.
constexpr std::array<std::string_view, 9> kEnders = {"is", "in", "not", "hold", "holds", "and", "or", "then", "if"};

bool is_number(char c) { return c >= '0' && c <= '9'; }

// "r5c1", "r12c3", "b7": a letter, numbers, nothing else but a second such pair.
bool is_like_a_place(const std::string& name) {
  if (name.size() < 2 || (name[0] != 'r' && name[0] != 'c' && name[0] != 'b') || !is_number(name[1])) return false;
  std::size_t at = 1;
  while (at < name.size() && is_number(name[at])) ++at;
  if (at == name.size()) return true;
  if (name[0] != 'r' || name[at] != 'c' || ++at == name.size()) return false;
  return std::all_of(name.begin() + static_cast<std::ptrdiff_t>(at), name.end(), is_number);
}

CellGroup group_of(const std::map<Cell, int>& counts) {
  CellGroup group;
  for (const auto& [cell, times] : counts) {
    if (times > 0) group.push_back({cell, std::min(times, kMostTimes)});
  }
  return group;
}

CellGroup both(const CellGroup& a, const CellGroup& b) {
  CellGroup group;
  for (const CellCount& item : a) {
    for (const CellCount& other : b) {
      if (item.cell == other.cell) group.push_back({item.cell, std::min(item.times, other.times)});
    }
  }
  return group;
}

CellGroup minus(CellGroup a, const CellGroup& b) {
  const CellSet gone = cells_of(b);
  std::erase_if(a, [&gone](const CellCount& item) { return gone.has(item.cell); });
  return a;
}

}  // namespace

ClaimWord WordReader::next() {
  ClaimWord read = word();
  if (at_ + 1 < words_.size()) ++at_;
  return read;
}

bool WordReader::take(std::string_view text) {
  if (!is(text)) return false;
  next();
  return true;
}

void WordReader::expect(std::string_view text, std::string_view hint) {
  if (!take(text)) complain(word(), "'" + std::string(text) + "' is missing here", std::string(hint));
}

void WordReader::complain(const ClaimWord& at, std::string message, std::string hint, ErrorCode code) {
  if (!fault_) fault_ = Error{code, std::move(message), std::move(hint), at.where};
}

void WordReader::finish() {
  if (!is_at_end()) complain(word(), "'" + word().text + "' does not go on from here", "join claims with and, or, or put each on its own line");
}

bool WordReader::enter() {
  if (++depth_ <= kDeepest && !has_fault()) return true;
  complain(word(), "too many brackets within one another", "split the claim into several");
  return false;
}

bool WordReader::is_digit_word(const ClaimWord& word) const {
  if (word.kind == ClaimWord::Kind::kNumber) return true;
  return shape_.side() > 9 && word.kind == ClaimWord::Kind::kName && word.text.size() == 1 && word.text[0] >= 'a' && word.text[0] <= 'g';
}

bool WordReader::is_group_ahead() const {
  if (word().is("{") || word().is("open")) return true;
  if (word().kind != ClaimWord::Kind::kName) return false;
  if (vocabulary_.has(word().text)) return true;
  const char first = word().text[0];
  return word().text.size() > 1 && (first == 'r' || first == 'c' || first == 'b') && is_number(word().text[1]);
}

CellGroup WordReader::cross(const std::string& name) const {
  const std::size_t middle = name.find('c');
  if (shape_.side() > 9 || name[0] != 'r' || middle == std::string::npos || middle < 2 || middle + 1 >= name.size()) return {};
  std::map<Cell, int> counts;
  for (const char row : name.substr(1, middle - 1)) {
    for (const char column : name.substr(middle + 1)) {
      const int r = row - '1';
      const int c = column - '1';
      if (r < 0 || r >= shape_.side() || c < 0 || c >= shape_.side()) return {};
      ++counts[shape_.cell_at(r, c)];
    }
  }
  return group_of(counts);
}

CellGroup WordReader::read_named(const ClaimWord& name) {
  const auto group = vocabulary_.groups.find(name.text);
  if (group != vocabulary_.groups.end()) return group->second;
  if (const NamedBalance* balance = vocabulary_.balance(name.text)) {
    expect(".", "write " + name.text + ".left or " + name.text + ".right for its cells");
    const bool is_left = is("left");
    if (!is_left && !is("right")) complain(word(), "a balance has a left and a right", "write " + name.text + ".left or " + name.text + ".right");
    next();
    return remainder_of(shape_, balance->weights, is_left);
  }
  const std::string side = to_text(shape_.side());
  if (is_like_a_place(name.text)) {
    complain(name, "there is no " + name.text + " on this grid", "rows, columns and boxes go from 1 to " + side + "; cells are r1c1" + (shape_.side() > 9 ? "" : ", several at once r12c34"), ErrorCode::kBadName);
    return {};
  }
  complain(name, "'" + name.text + "' is neither a cell nor a house nor a name given before",
           "cells are r1c1 or r12c3, houses r1 c1 b1; names come from 'let " + name.text + " = ...'", ErrorCode::kBadName);
  return {};
}

CellGroup WordReader::read_base() {
  if (!enter()) return {};
  CellGroup group;
  if (take("{")) {
    group = read_group();
    expect("}", "close the brace around the cells");
  } else if (take("open")) {
    group = read_base();
    std::erase_if(group, [this](const CellCount& item) { return position_.is_placed(item.cell); });
  } else {
    const ClaimWord name = next();
    const auto cell = shape_.parse_cell(name.text);
    const auto house = shape_.parse_house(name.text);
    if (name.kind != ClaimWord::Kind::kName) {
      complain(name, name.kind == ClaimWord::Kind::kEnd ? "cells are missing at the end" : "cells are wanted here, not '" + name.text + "'", "cells are r3c4, r12c45, r3, c7, b5 or a name");
    } else if (cell) {
      group = {{*cell, 1}};
    } else if (house) {
      for (const Cell each : shape_.cells(*house)) group.push_back({each, 1});
    } else {
      group = cross(name.text);
      if (group.empty()) group = read_named(name);
    }
  }
  leave();
  return group;
}

CellGroup WordReader::read_item() {
  CellGroup group = read_base();
  while (!has_fault()) {
    if (take("&")) group = both(group, read_base());
    else if (take("without")) group = minus(std::move(group), read_base());
    else break;
  }
  return group;
}

CellGroup WordReader::read_group() {
  std::map<Cell, int> counts;
  do {
    for (const CellCount& item : read_item()) counts[item.cell] += item.times;
    // A comma is part of the group only when cells follow.
    if (is(",")) {
      next();
      if (!is_group_ahead()) complain(word(), "cells are wanted after the comma", "take the comma away, or name more cells");
    }
  } while (!has_fault() && is_group_ahead() && std::find(kEnders.begin(), kEnders.end(), word().text) == kEnders.end());
  return group_of(counts);
}

std::optional<Digit> WordReader::one_digit(const ClaimWord& word) {
  int number = 0;
  if (word.kind == ClaimWord::Kind::kNumber) {
    for (const char c : word.text) number = std::min(number * 10 + (c - '0'), 1000);
  } else {
    number = word.text.empty() ? 0 : word.text[0] - 'a' + 10;
  }
  if (number >= 1 && number <= shape_.side()) return Digit(number - 1);
  complain(word, "there is no digit " + word.text + " on this grid", "digits go from 1 to " + std::string(1, Shape::name_of(Digit(shape_.side() - 1))));
  return std::nullopt;
}

void WordReader::add_digits(const ClaimWord& first, DigitCounts& counts) {
  if (take("..")) {
    const auto low = one_digit(first);
    const auto high = is_digit_ahead() ? one_digit(next()) : std::nullopt;
    if (!low || !high || *high < *low) return complain(word(), "a range of digits is wanted here", "write 1..9");
    for (int digit = low->index; digit <= high->index; ++digit) ++counts[static_cast<std::size_t>(digit)];
    return;
  }
  if (shape_.side() > 9 || first.kind != ClaimWord::Kind::kNumber) {
    if (const auto digit = one_digit(first)) ++counts[digit->index];
    return;
  }
  // "56" is 5 and 6.
  for (const char c : first.text) {
    ClaimWord one = first;
    one.text = std::string(1, c);
    if (const auto digit = one_digit(one)) ++counts[digit->index];
  }
}

DigitCounts WordReader::read_digits() {
  DigitCounts counts{};
  do {
    if (!is_digit_ahead()) {
      complain(word(), "a digit is wanted here", "digits are separated by commas, as in 5,6");
      break;
    }
    add_digits(next(), counts);
  } while (!has_fault() && is(",") && is_digit_word(word(1)) && take(","));
  return counts;
}

std::optional<int> WordReader::read_number() {
  if (word().kind == ClaimWord::Kind::kNumber) {
    int number = 0;
    for (const char c : next().text) number = std::min(number * 10 + (c - '0'), 1000);
    return number;
  }
  const auto found = std::find(kNumbers.begin(), kNumbers.end(), word().text);
  if (found == kNumbers.end()) return std::nullopt;
  next();
  return static_cast<int>(found - kNumbers.begin());
}

}  // namespace cp
