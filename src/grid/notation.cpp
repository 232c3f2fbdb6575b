// SPDX-License-Identifier: Apache-2.0
#include "grid/notation.h"

#include <algorithm>
#include <vector>

#include "base/text.h"

namespace cp {

namespace {

constexpr std::string_view kEmptyCell = ".0_";
constexpr std::string_view kBlank = " \t\r\n\f\v";
constexpr std::string_view kRule = "|+-,;:=";

// One word of a candidate grid, or one cell character, with its place in the text.
struct Token {
  std::string_view text;
  TextSpan where;
};

bool is_in(std::string_view set, char character) { return set.find(character) != std::string_view::npos; }

// Walks through a text and knows line and column. Columns count characters, not bytes, so that a place after
// an accented letter is still right.
class Cursor {
 public:
  explicit Cursor(std::string_view text) : text_(text) {}
  [[nodiscard]] bool at_end() const { return at_ >= text_.size(); }
  [[nodiscard]] char peek() const { return text_[at_]; }
  [[nodiscard]] TextSpan here(std::size_t length = 1) const { return {at_, length, line_, column_}; }
  void advance() {
    const char character = text_[at_++];
    if (character == '\n') {
      ++line_;
      column_ = 1;
    } else if ((static_cast<unsigned char>(character) & 0xC0U) != 0x80U) {
      ++column_;
    }
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 1;
  int column_ = 1;
};

Error bad_puzzle(std::string message, std::string hint, TextSpan where) {
  return Error{ErrorCode::kBadPuzzle, std::move(message), std::move(hint), where};
}

// Bytes of the UTF-8 character that begins at `at`; 0 when the bytes there are none (RFC 3629).
std::size_t character_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const unsigned first = byte(at);
  const unsigned second = byte(at + 1);
  if (first < 0x80) return 1;
  if (first < 0xC2 || first > 0xF4) return 0;
  if ((first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F)) return 0;
  if ((first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F)) return 0;
  const std::size_t length = first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(at + i) & 0xC0U) != 0x80U) return 0;
  }
  return length;
}

// The character as a message shows it: whole, and never bytes that are no text.
std::string shown(std::string_view text, std::size_t at) {
  const auto first = static_cast<unsigned char>(text[at]);
  const std::size_t length = character_length(text, at);
  if (length == 0) return "byte " + to_text(first);
  if (first < 0x20 || first == 0x7F) return "control character " + to_text(first);
  return "'" + std::string(text.substr(at, length)) + "'";
}

// The words between white space and '|', rules such as "+---+" left out.
std::vector<Token> words_of(std::string_view text) {
  std::vector<Token> words;
  Cursor cursor(text);
  while (!cursor.at_end()) {
    if (is_in(kBlank, cursor.peek()) || cursor.peek() == '|') {
      cursor.advance();
      continue;
    }
    const TextSpan start = cursor.here();
    std::size_t length = 0;
    while (!cursor.at_end() && !is_in(kBlank, cursor.peek()) && cursor.peek() != '|') {
      cursor.advance();
      ++length;
    }
    const std::string_view word = text.substr(start.offset, length);
    const bool is_rule = std::all_of(word.begin(), word.end(), [](char c) { return is_in("+-=", c); });
    if (!is_rule) words.push_back({word, {start.offset, length, start.line, start.column}});
  }
  return words;
}

// A grid of candidates has one word a cell, and at least one word of several characters.
bool looks_like_candidates(const std::vector<Token>& words) {
  const Shape* shape = find_shape_with_cells(static_cast<int>(words.size()));
  if (shape == nullptr) return false;
  // Longer words are rows: a 16x16 grid written in 16 lines has as many words as a 4x4 grid has cells.
  const std::size_t longest = static_cast<std::size_t>(shape->side()) + 2;
  if (std::any_of(words.begin(), words.end(), [&](const Token& word) { return word.text.size() > longest; })) return false;
  return std::any_of(words.begin(), words.end(), [](const Token& word) { return word.text.size() > 1; });
}

std::string digit_range(const Shape& shape) {
  return std::string("digits of a ") + std::string(shape.name()) + " grid are 1 to " + Shape::name_of(Digit(shape.side() - 1));
}

Result<DigitSet> digits_of_word(const Token& word, std::string_view digits, const Shape& shape) {
  DigitSet set;
  for (std::size_t i = 0; i < digits.size(); ++i) {
    TextSpan where = word.where;
    where.length = 1;
    where.offset += i;
    where.column += static_cast<int>(i);
    const auto digit = digit_from(digits[i], shape);
    if (!digit) return bad_puzzle(shown(digits, i) + " is not a digit", digit_range(shape), where);
    if (set.has(*digit)) return bad_puzzle("digit " + std::string(1, digits[i]) + " stands twice in one cell", "write each candidate once", where);
    set.add(*digit);
  }
  return set;
}

struct CellWord {
  DigitSet digits;
  bool is_placed = false;
  bool is_given = false;
};

Result<CellWord> read_cell_word(const Token& word, const Shape& shape) {
  std::string_view digits = word.text;
  const bool bracketed = digits.size() >= 2 && digits.front() == '(' && digits.back() == ')';
  const bool solved = digits.size() >= 2 && digits.front() == '=';
  Token inner = word;
  if (bracketed || solved) {
    digits.remove_prefix(1);
    if (bracketed) digits.remove_suffix(1);
    ++inner.where.offset;
    ++inner.where.column;
  }
  if (digits.size() == 1 && is_in(kEmptyCell, digits[0]) && !solved) return CellWord{shape.digits(), false, false};
  auto set = digits_of_word(inner, digits, shape);
  if (!set) return set.error();
  if (solved && set->size() != 1) return bad_puzzle("'" + std::string(word.text) + "' places more than one digit", "'=' is followed by exactly one digit", word.where);
  const bool single = set->size() == 1 && !bracketed;
  return CellWord{*set, single, single && !solved};
}

Result<Position> parse_candidates(const std::vector<Token>& words) {
  const Shape& shape = *find_shape_with_cells(static_cast<int>(words.size()));
  Position position(shape);
  std::vector<CellWord> cells;
  for (const Token& word : words) {
    auto cell = read_cell_word(word, shape);
    if (!cell) return cell.error();
    cells.push_back(*cell);
  }
  for (const Cell cell : shape.all_cells()) {
    const CellWord& word = cells[cell.index];
    if (word.is_given) position.place_given(cell, word.digits.lowest());
    else if (word.is_placed) position.place(cell, word.digits.lowest());
  }
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell) - cells[cell.index].digits) position.eliminate({cell, digit});
  }
  return position;
}

Error wrong_length(std::size_t count, TextSpan end) {
  std::string wanted;
  std::string nearest;
  std::size_t gap = static_cast<std::size_t>(-1);
  for (const Shape* shape : all_shapes()) {
    const auto cells = static_cast<std::size_t>(shape->cell_count());
    wanted += (wanted.empty() ? "" : ", ") + to_text(shape->cell_count()) + " (" + std::string(shape->name()) + ")";
    const std::size_t distance = cells > count ? cells - count : count - cells;
    if (distance < gap) {
      gap = distance;
      nearest = distance == 0 ? "" : to_text(static_cast<long long>(distance)) + (cells > count ? " too few" : " too many") + " for " + std::string(shape->name());
    }
  }
  return bad_puzzle("the puzzle has " + to_text(static_cast<long long>(count)) + (count == 1 ? " cell, " : " cells, ") + nearest,
                    "a puzzle has one character a cell, '.' or 0 where it is empty: " + wanted + " cells", end);
}

// Reads one character a cell. Empty cells stay without a digit.
Result<Position> parse_characters(std::string_view text) {
  std::vector<Token> cells;
  Cursor cursor(text);
  TextSpan last{0, 0, 1, 1};
  while (!cursor.at_end()) {
    const char character = cursor.peek();
    const TextSpan where = cursor.here();
    const bool is_letter = (character >= 'A' && character <= 'G') || (character >= 'a' && character <= 'g');
    if (is_in(kEmptyCell, character) || (character >= '1' && character <= '9') || is_letter) {
      cells.push_back({text.substr(where.offset, 1), where});
      last = where;
    } else if (!is_in(kBlank, character) && !is_in(kRule, character)) {
      return bad_puzzle(shown(text, where.offset) + " cannot stand in a puzzle", "use digits, and '.' or 0 for an empty cell", where);
    }
    cursor.advance();
  }
  if (cells.empty()) return bad_puzzle("there is no puzzle here", "give 81 characters, row by row, '.' or 0 for an empty cell", {0, text.size(), 1, 1});
  const Shape* shape = find_shape_with_cells(static_cast<int>(cells.size()));
  if (shape == nullptr) return wrong_length(cells.size(), last);
  Position position(*shape);
  for (const Cell cell : shape->all_cells()) {
    const Token& token = cells[cell.index];
    if (is_in(kEmptyCell, token.text[0])) continue;
    const auto digit = digit_from(token.text[0], *shape);
    if (!digit) return bad_puzzle("'" + std::string(token.text) + "' is no digit in cell " + shape->name_of(cell), digit_range(*shape), token.where);
    position.place_given(cell, *digit);
  }
  return position;
}

std::string cell_word(const Position& position, Cell cell) {
  std::string word;
  for (const Digit digit : position.candidates(cell)) word += Shape::name_of(digit);
  if (position.givens().has(cell)) return word;
  if (position.is_placed(cell)) return "=" + word;
  return word.size() < 2 ? "(" + word + ")" : word;
}

}  // namespace

std::optional<Digit> digit_from(char character, const Shape& shape) {
  int number = 0;
  if (character >= '1' && character <= '9') number = character - '0';
  if (character >= 'A' && character <= 'G') number = character - 'A' + 10;
  if (character >= 'a' && character <= 'g') number = character - 'a' + 10;
  if (number < 1 || number > shape.side()) return std::nullopt;
  return Digit(number - 1);
}

Result<Position> parse_position(std::string_view text) {
  const std::vector<Token> words = words_of(text);
  if (looks_like_candidates(words)) return parse_candidates(words);
  return parse_characters(text);
}

std::string to_line(const Position& position) {
  std::string line;
  for (const Cell cell : position.shape().all_cells()) {
    const auto digit = position.digit_at(cell);
    line += digit ? Shape::name_of(*digit) : '.';
  }
  return line;
}

std::string givens_line(const Position& position) {
  std::string line = to_line(position);
  for (const Cell cell : position.shape().all_cells() - position.givens()) line[cell.index] = '.';
  return line;
}

std::string to_grid_text(const Position& position) {
  const Shape& shape = position.shape();
  const std::string line = to_line(position);
  std::string text;
  for (int row = 0; row < shape.side(); ++row) {
    if (row > 0 && row % shape.box_rows() == 0) {
      for (int stack = 0; stack < shape.stack_count(); ++stack) {
        text += (stack > 0 ? "+-" : "") + std::string(static_cast<std::size_t>(2 * shape.box_columns()), '-');
      }
      text.pop_back();
      text += '\n';
    }
    for (int column = 0; column < shape.side(); ++column) {
      if (column > 0) text += column % shape.box_columns() == 0 ? " | " : " ";
      text += line[shape.cell_at(row, column).index];
    }
    text += '\n';
  }
  return text;
}

std::string to_candidate_text(const Position& position) {
  const Shape& shape = position.shape();
  std::vector<std::string> words;
  std::vector<std::size_t> widths(static_cast<std::size_t>(shape.side()));
  for (const Cell cell : shape.all_cells()) {
    words.push_back(cell_word(position, cell));
    auto& width = widths[static_cast<std::size_t>(shape.column_of(cell))];
    width = std::max(width, words.back().size());
  }
  std::string text;
  for (int row = 0; row < shape.side(); ++row) {
    if (row > 0 && row % shape.box_rows() == 0) text += "\n";
    for (int column = 0; column < shape.side(); ++column) {
      if (column > 0) text += column % shape.box_columns() == 0 ? " | " : " ";
      std::string word = words[shape.cell_at(row, column).index];
      if (column + 1 < shape.side()) word.resize(widths[static_cast<std::size_t>(column)], ' ');
      text += word;
    }
    text += "\n";
  }
  return text;
}

}  // namespace cp
