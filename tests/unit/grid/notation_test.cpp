// SPDX-License-Identifier: Apache-2.0
#include "grid/notation.h"

#include <gtest/gtest.h>

#include "support/data_rows.h"
#include "support/random_states.h"

namespace cp {
namespace {

// The puzzle W-main of puzzles.tsv in many dresses.
constexpr const char* kPuzzle = "53..7....6..195....98....6.8...6...34..8.3..17...2...6.6....28....419..5....8..79";

std::string with_every(std::string_view line, std::size_t step, std::string_view between) {
  std::string text;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (i > 0 && i % step == 0) text += between;
    text += line[i];
  }
  return text;
}

std::string replaced(std::string text, char from, char to) {
  for (char& character : text) {
    if (character == from) character = to;
  }
  return text;
}

TEST(Notation, ReadsAPuzzleInEveryAcceptedDress) {
  const Position expected = parse_position(kPuzzle).value();
  EXPECT_EQ(expected.givens().size(), 30);
  EXPECT_EQ(expected.shape().name(), "9x9");
  for (const std::string& text : {
           replaced(kPuzzle, '.', '0'),
           replaced(kPuzzle, '.', '_'),
           "  " + std::string(kPuzzle) + "\n",
           with_every(kPuzzle, 9, "\n"),
           with_every(kPuzzle, 9, "\r\n"),
           with_every(kPuzzle, 1, " "),
           with_every(kPuzzle, 1, ","),
           with_every(kPuzzle, 3, "|"),
           with_every(kPuzzle, 27, "\n---+---+---\n"),
           with_every(kPuzzle, 27, "\n===========\n"),
           with_every(kPuzzle, 9, ";"),
           with_every(kPuzzle, 9, "\t"),
           to_grid_text(expected),
           to_candidate_text(parse_position(kPuzzle).value()),
       }) {
    const auto position = parse_position(text);
    ASSERT_TRUE(position.is_ok()) << text << "\n" << position.error().message;
    EXPECT_EQ(*position, expected) << text;
    EXPECT_EQ(givens_line(*position), kPuzzle);
  }
}

TEST(Notation, TakesTheShapeFromTheNumberOfCells) {
  for (const Shape* shape : all_shapes()) {
    const auto position = parse_position(std::string(static_cast<std::size_t>(shape->cell_count()), '.'));
    ASSERT_TRUE(position.is_ok()) << shape->name();
    EXPECT_EQ(&position->shape(), shape);
    EXPECT_TRUE(position->givens().is_empty());
  }
}

TEST(Notation, ReadsLettersOfEitherCaseOnSixteen) {
  const std::string line = "123456789ABCDEFG" + std::string(240, '.');
  const auto upper = parse_position(line);
  ASSERT_TRUE(upper.is_ok());
  EXPECT_EQ(upper->digit_at(Cell(9)), Digit(9));
  EXPECT_EQ(upper->digit_at(Cell(15)), Digit(15));
  EXPECT_EQ(to_line(*upper), line);
  std::string lower = line;
  for (char& character : lower) {
    if (character >= 'A' && character <= 'G') character = static_cast<char>(character - 'A' + 'a');
  }
  EXPECT_EQ(*parse_position(lower), *upper);
}

TEST(Notation, ReadsThePublishedSixteenBySixteenInstances) {
  for (const support::Row& row : support::data_rows("sixteen_instances.tsv")) {
    const auto position = parse_position(row.at(1));
    ASSERT_TRUE(position.is_ok()) << row.at(0);
    EXPECT_EQ(to_line(*position), row.at(1));
  }
}

TEST(Notation, ReadsAPuzzleWhoseGivensClash) {
  const auto position = parse_position("11" + std::string(79, '.'));
  ASSERT_TRUE(position.is_ok());
  EXPECT_TRUE(position->has_clash());
  EXPECT_FALSE(parse_position(kPuzzle)->has_clash());
}

TEST(Notation, TellsGivensPlacementsAndCandidatesApart) {
  // r1c1 a given, r1c2 placed by the solver, r1c3 one candidate left, r1c4 two, r2c1 all that are left.
  const auto position = parse_position("1 =2 (3) 34 . 34 12 12 234 134 24 12 234 13 1234 123");
  ASSERT_TRUE(position.is_ok()) << position.error().message;
  EXPECT_EQ(position->shape().name(), "4x4");
  EXPECT_TRUE(position->givens().has(Cell(0)));
  EXPECT_TRUE(position->is_placed(Cell(1)));
  EXPECT_FALSE(position->givens().has(Cell(1)));
  EXPECT_FALSE(position->is_placed(Cell(2)));
  EXPECT_EQ(position->candidates(Cell(2)), DigitSet::of(Digit(2)));
  EXPECT_EQ(position->candidates(Cell(3)).size(), 2);
  EXPECT_EQ(position->candidates(Cell(4)), DigitSet::of(Digit(2)) | DigitSet::of(Digit(3)));  // 1 and 2 stand in the box
}

TEST(Notation, RoundTripKeepsRandomCandidateGrids) {
  for (const Shape* shape : all_shapes()) {
    const int rounds = shape->side() > 9 ? 12 : 300;
    for (std::uint64_t seed = 0; seed < static_cast<std::uint64_t>(rounds); ++seed) {
      Position position = support::random_state(*shape, 100'000 + seed);
      const std::string text = to_candidate_text(position);
      const auto again = parse_position(text);
      ASSERT_TRUE(again.is_ok()) << text << again.error().message;
      ASSERT_EQ(*again, position) << shape->name() << " " << seed << "\n" << text;
    }
  }
}

TEST(Notation, RoundTripKeepsACellWithoutCandidates) {
  Position position(*find_shape("4x4"));
  for (const Digit digit : position.shape().digits()) position.eliminate({Cell(5), digit});
  const auto again = parse_position(to_candidate_text(position));
  ASSERT_TRUE(again.is_ok()) << to_candidate_text(position);
  EXPECT_EQ(*again, position);
}

TEST(Notation, RoundTripKeepsAFullGridAndAnEmptyOne) {
  for (const Shape* shape : all_shapes()) {
    for (const Position& position : {random_grid(*shape, 3).to_position(), Position(*shape)}) {
      EXPECT_EQ(parse_position(to_candidate_text(position)).value(), position) << shape->name();
      EXPECT_EQ(parse_position(to_grid_text(position)).value(), position) << shape->name();
      EXPECT_EQ(parse_position(to_line(position)).value(), position) << shape->name();
    }
  }
}

TEST(Notation, WritesAGridWithRulesBetweenTheBoxes) {
  EXPECT_EQ(to_grid_text(parse_position(".12.......1....3").value()),
            ". 1 | 2 .\n"
            ". . | . .\n"
            "----+----\n"
            ". . | 1 .\n"
            ". . | . 3\n");
}

struct Malformed {
  const char* what;
  std::string text;
  std::string message;
  std::string hint;
  int line;
  int column;
};

const std::string kUseDigits = "use digits, and '.' or 0 for an empty cell";
const std::string kLengths = "a puzzle has one character a cell, '.' or 0 where it is empty: 16 (4x4), 36 (6x6), 81 (9x9), 256 (16x16) cells";

// A 4x4 candidate grid with one word exchanged.
std::string candidates_with(const std::string& word) { return "1 2 34 34 34 34 12 12 1234 1234 1234 1234 1234 1234 1234 " + word; }

std::vector<Malformed> malformed_texts() {
  const std::string dots80(80, '.');
  return {
      {"nothing", "", "there is no puzzle here", "give 81 characters, row by row, '.' or 0 for an empty cell", 1, 1},
      {"blanks", " \n\t\r\n ", "there is no puzzle here", "give 81 characters, row by row, '.' or 0 for an empty cell", 1, 1},
      {"rules only", "---+---", "there is no puzzle here", "give 81 characters, row by row, '.' or 0 for an empty cell", 1, 1},
      {"one too few", dots80, "the puzzle has 80 cells, 1 too few for 9x9", kLengths, 1, 80},
      {"one too many", dots80 + "..", "the puzzle has 82 cells, 1 too many for 9x9", kLengths, 1, 82},
      {"one cell", "5", "the puzzle has 1 cell, 15 too few for 4x4", kLengths, 1, 1},
      {"far too many", std::string(300, '.'), "the puzzle has 300 cells, 44 too many for 16x16", kLengths, 1, 300},
      {"a letter beyond the digits", "x" + dots80, "'x' cannot stand in a puzzle", kUseDigits, 1, 1},
      {"in the second line", ".........\n....?....\n", "'?' cannot stand in a puzzle", kUseDigits, 2, 5},
      {"after CRLF", ".........\r\n..!......", "'!' cannot stand in a puzzle", kUseDigits, 2, 3},
      {"an asterisk as the last cell", dots80 + "*", "'*' cannot stand in a puzzle", kUseDigits, 1, 81},
      {"an accented letter", "..\xC3\xA9" + dots80, "'\xC3\xA9' cannot stand in a puzzle", kUseDigits, 1, 3},
      {"half a character", std::string("..\xC3"), "byte 195 cannot stand in a puzzle", kUseDigits, 1, 3},
      {"a sign outside the alphabet", "\xE2\x96\xA1.", "'\xE2\x96\xA1' cannot stand in a puzzle", kUseDigits, 1, 1},
      {"a control character", std::string(3, '.') + '\x07', "control character 7 cannot stand in a puzzle", kUseDigits, 1, 4},
      {"a letter digit on 9x9", dots80 + "A", "'A' is no digit in cell r9c9", "digits of a 9x9 grid are 1 to 9", 1, 81},
      {"a digit too large on 4x4", ".....5..........", "'5' is no digit in cell r2c2", "digits of a 4x4 grid are 1 to 4", 1, 6},
      {"a digit too large on 6x6 in line 2", "......\n7.....\n......\n......\n......\n......", "'7' is no digit in cell r2c1", "digits of a 6x6 grid are 1 to 6", 2, 1},
      {"a candidate too large", candidates_with("15"), "'5' is not a digit", "digits of a 4x4 grid are 1 to 4", 1, 59},
      {"a candidate twice", candidates_with("131"), "digit 1 stands twice in one cell", "write each candidate once", 1, 60},
      {"a placement of two digits", candidates_with("=12"), "'=12' places more than one digit", "'=' is followed by exactly one digit", 1, 58},
      {"a placement of nothing", candidates_with("=."), "'.' is not a digit", "digits of a 4x4 grid are 1 to 4", 1, 59},
      {"an open bracket", candidates_with("(1"), "'(' is not a digit", "digits of a 4x4 grid are 1 to 4", 1, 58},
      {"a wrong digit in brackets", candidates_with("(9)"), "'9' is not a digit", "digits of a 4x4 grid are 1 to 4", 1, 59},
  };
}

TEST(Notation, RefusesMalformedTextsWithThePlaceAndAHint) {
  for (const Malformed& bad : malformed_texts()) {
    const auto position = parse_position(bad.text);
    ASSERT_FALSE(position.is_ok()) << bad.what;
    EXPECT_EQ(position.error().code, ErrorCode::kBadPuzzle) << bad.what;
    EXPECT_EQ(position.error().message, bad.message) << bad.what;
    EXPECT_EQ(position.error().hint, bad.hint) << bad.what;
    EXPECT_EQ(position.error().where.line, bad.line) << bad.what;
    EXPECT_EQ(position.error().where.column, bad.column) << bad.what;
  }
}

// Well-formed UTF-8 by the table of RFC 3629, section 4.
bool is_utf8(std::string_view text) {
  std::size_t at = 0;
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  const auto tail = [&](std::size_t i) { return byte(i) >= 0x80 && byte(i) <= 0xBF; };
  while (at < text.size()) {
    const unsigned first = byte(at);
    if (first <= 0x7F) at += 1;
    else if (first >= 0xC2 && first <= 0xDF && tail(at + 1)) at += 2;
    else if (first >= 0xE0 && first <= 0xEF && tail(at + 1) && tail(at + 2) && !(first == 0xE0 && byte(at + 1) < 0xA0) && !(first == 0xED && byte(at + 1) > 0x9F)) at += 3;
    else if (first >= 0xF0 && first <= 0xF4 && tail(at + 1) && tail(at + 2) && tail(at + 3) && !(first == 0xF0 && byte(at + 1) < 0x90) && !(first == 0xF4 && byte(at + 1) > 0x8F)) at += 4;
    else return false;
  }
  return true;
}

TEST(Notation, RefusesRandomBytesWithAMessageThatIsText) {
  Rng rng(99);
  for (int round = 0; round < 5000; ++round) {
    std::string text;
    const auto length = rng.below(120);
    for (std::uint32_t i = 0; i < length; ++i) text += static_cast<char>(rng.below(256));
    const auto position = parse_position(text);
    if (position.is_ok()) continue;
    EXPECT_EQ(position.error().code, ErrorCode::kBadPuzzle);
    EXPECT_TRUE(is_utf8(position.error().message)) << position.error().message;
    EXPECT_LE(position.error().where.offset, text.size());
    EXPECT_GE(position.error().where.line, 1);
    EXPECT_GE(position.error().where.column, 1);
  }
}

TEST(Notation, RefusesAPuzzleWithOneByteSpoiltAndPointsAtIt) {
  Rng rng(7);
  for (int round = 0; round < 2000; ++round) {
    std::string text = kPuzzle;
    const auto place = rng.below(81);
    const char spoilt = static_cast<char>(rng.below(256));
    text[place] = spoilt;
    const auto position = parse_position(text);
    if (position.is_ok()) continue;  // another digit, or an empty cell
    EXPECT_TRUE(is_utf8(position.error().message));
    // A blank or a rule leaves 80 cells; anything else is named at its place. Columns count characters, and stray
    // UTF-8 continuation bytes begin none, so only offsets are compared.
    if (position.error().message.find("80 cells") == std::string::npos) {
      EXPECT_EQ(position.error().where.offset, place);
    }
  }
}

}  // namespace
}  // namespace cp
