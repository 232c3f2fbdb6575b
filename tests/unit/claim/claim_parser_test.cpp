// SPDX-License-Identifier: Apache-2.0
// Sentences mean what they say, and what is no sentence is refused with its place.
#include "claim/claim_parser.h"

#include <gtest/gtest.h>

#include "base/rng.h"
#include "claim/script.h"
#include "exact/random_grid.h"
#include "support/data_rows.h"
#include "support/random_sayings.h"

namespace cp {
namespace {

const std::string kGrid = "658729143249315786173684529465197238812463975397852614531978462724536891986241357";

FullGrid grid() { return *FullGrid::from_line(kGrid); }

bool is_true_in_grid(const std::string& text) {
  const auto claim = parse_claim(Position(standard_shape()), {}, text);
  EXPECT_TRUE(claim.is_ok()) << text << ": " << (claim ? "" : claim.error().message);
  return claim && holds_in(*claim, grid());
}

TEST(ClaimParser, SentencesMeanWhatTheySay) {
  for (const char* text : {"r1c1 = 6", "R1C1 is 6", "r1c1 != 5", "r1c1 <> 5", "r1c1 is not 5", "r1c1 \xE2\x89\xA0 5", "r1c12 in 5,6", "r1c12 in 56", "r1c1 r1c2 not in 7..9", "r1c1 \xE2\x88\x88 6",
                           "r1c1 = r2c7 or r1c1 = 6", "r1c1 != r1c2", "r1c1 r1c2 r1c3 hold 5,6,8", "r1c12 holds 6,?", "{r1} = {c5}", "{r1 r2} = {c1} + 1..9", "r1 r1 = c3 + 1..9",
                           "exactly one 5 in r1", "at least two 5s in r1 r2", "at most 2 5s in r1, r2", "no 9 in r1c12", "a 6 in b1", "exactly two 5,6 in r1", "if r1c1 = 6 then r1c2 = 5", "r1c1 = 1 => r1c2 = 9",
                           "not (r1c1 = 5 and r1c2 = 6)", "r1c1 = 5 or r1c2 = 5 and r1c3 = 8", "{r1 & b1} hold 6,5,8", "r1 without b1 not in 5,6,8"}) {
    EXPECT_TRUE(is_true_in_grid(text)) << text;
  }
  for (const char* text : {"r1c1 = 5", "r1c1 != 6", "r1c12 in 5,7", "r1c1 = r1c2", "r1c1 r1c2 hold 5,5", "exactly two 5s in r1", "at least two 5s in r1", "no 6 in r1", "if r1c1 = 6 then r1c2 = 6",
                           "not r1c1 = 6", "r1c1 = 5 and r1c2 = 5", "{r1c1 r1c2} = {r2c1} + 5", "r1c12 hold 9,?"}) {
    EXPECT_FALSE(is_true_in_grid(text)) << text;
  }
}

struct Faulty {
  const char* text;
  int column;
  const char* message;
};

TEST(ClaimParser, FaultsHaveTheirPlace) {
  for (const Faulty& faulty : {Faulty{"r1c1 =", 7, "a digit is wanted here"}, Faulty{"r1q1 = 5", 1, "'r1q1' is neither a cell"}, Faulty{"r1c1 == r1c2 ==", 14, "does not go on"},
                               Faulty{"r1c1 r1c2 hold 1,2,3", 11, "two cells cannot hold three digits"}, Faulty{"r1 = c1 + 5", 4, "not equally large"}, Faulty{"r1c1 = 0", 8, "no digit 0"},
                               Faulty{"if r1c1 = 5 r1c2 = 6", 13, "'then' is missing"}, Faulty{"(r1c1 = 5", 10, "')' is missing"}, Faulty{"exactly 5s in r1", 10, "a digit is wanted"},
                               Faulty{"", 1, "a claim is missing"}, Faulty{"hello", 1, "no claim starts with"}, Faulty{"r1c1 \xE2\x89\xA0 5 $", 10, "means nothing"}, Faulty{"r1c1 , = 5", 8, "after the comma"}}) {
    const auto claim = parse_claim(Position(standard_shape()), {}, faulty.text);
    ASSERT_FALSE(claim.is_ok()) << faulty.text;
    EXPECT_EQ(claim.error().where.column, faulty.column) << faulty.text << ": " << claim.error().message;
    EXPECT_NE(claim.error().message.find(faulty.message), std::string::npos) << faulty.text << ": " << claim.error().message;
    EXPECT_FALSE(claim.error().hint.empty());
  }
}

TEST(ClaimParser, BracketsAreBounded) {
  EXPECT_FALSE(parse_claim(Position(standard_shape()), {}, std::string(1000, '(') + "r1c1 = 5" + std::string(1000, ')')).is_ok());
  EXPECT_FALSE(parse_claim(Position(standard_shape()), {}, std::string(5000, ' ') + "r1c1 = 5").is_ok());
}

TEST(ClaimParser, PrintedSentencesAreReadAsTheyWereMeant) {
  for (const char* name : {"4x4", "6x6", "9x9", "16x16"}) {
    const Shape& shape = *find_shape(name);
    const FullGrid solution = random_grid(shape, 5);
    std::vector<int> digits;
    for (const Cell cell : shape.all_cells()) digits.push_back(solution.at(cell).number());
    support::RandomSayings sayings(shape, digits, 11);
    int so = 0;
    for (int i = 0; i < 2000; ++i) {
      const oracle::Saying saying = sayings.make();
      const std::string text = oracle::text_of(saying, shape.side());
      const auto claim = parse_claim(Position(shape), {}, text);
      ASSERT_TRUE(claim.is_ok()) << text << ": " << claim.error().message;
      ASSERT_EQ(holds_in(*claim, solution), oracle::is_so(saying, digits)) << name << ": " << text;
      so += oracle::is_so(saying, digits) ? 1 : 0;
    }
    EXPECT_GT(so, 500);
    EXPECT_LT(so, 1500);
  }
}

// Whatever is typed: an answer or a fault with a place inside the text.
TEST(ClaimParser, AnythingMayBeTyped) {
  static constexpr std::array<const char*, 44> kPieces = {"r1c1", "r12c3", "r9", "b5", "c0", "ring", "x", "x.left", "{", "}", "(", ")", "=", "!=", "in", "not", "hold", "holds", "exactly", "at", "least", "most",
                                                          "no", "a", "two", "5", "5s", "1..9", "..", ",", "+", "-", "2*", "*", "if", "then", "and", "or", "=>", "?", "open", "without", "&", "\xE2\x89\xA0"};
  Rng rng(7);
  Vocabulary vocabulary;
  vocabulary.groups["ring"] = {{Cell(0), 1}, {Cell(1), 2}};
  vocabulary.balances.push_back({"x", {{House(0), 1}, {House(9), -1}}});
  int read = 0;
  for (int i = 0; i < 60'000; ++i) {
    std::string text;
    // Every third time the start of a sentence, so that some can be read.
    if (rng.below(3) == 0) text = std::string(rng.below(2) == 0 ? "r12c3" : "ring x.left") + (rng.below(2) == 0 ? " in " : " != ") + "5,6 ";
    for (std::uint32_t pieces = text.empty() ? 1 + rng.below(9) : rng.below(3); pieces > 0; --pieces) text += std::string(kPieces[rng.below(kPieces.size())]) + (rng.below(8) == 0 ? "" : " ");
    if (!text.empty() && rng.below(10) == 0) text[rng.below(static_cast<std::uint32_t>(text.size()))] = static_cast<char>(rng.below(256));
    const auto claim = parse_claim(Position(standard_shape()), vocabulary, text);
    read += claim ? 1 : 0;
    ASSERT_TRUE(claim.is_ok() || claim.error().where.offset <= text.size()) << text;
    const auto script = parse_script(Position(standard_shape()), text, "rules");
    ASSERT_TRUE(script.is_ok() || !script.error().message.empty()) << text;
  }
  EXPECT_GT(read, 300);
}

TEST(ClaimScript, NamesFootingsAndClaims) {
  const auto script = parse_script(Position(standard_shape()),
                                   "# a comment\nlet ring = r1c1 r1c2\nbalance x = r1,r2 : c1,2*c2\nfooting x, r3\nring hold 1,2; r1c1 = 5 # said so\nfooting #1\nx.left = x.right - 1..9\n");
  ASSERT_TRUE(script.is_ok()) << script.error().message;
  ASSERT_EQ(script->claims.size(), 3U);
  EXPECT_EQ(script->claims[1].line, 5);
  EXPECT_EQ(script->claims[1].text, "r1c1 = 5");
  EXPECT_EQ(script->claims[0].footing.houses, std::vector<House>{House(2)});
  EXPECT_EQ(script->claims[0].footing.balances, std::vector<int>{0});
  EXPECT_EQ(script->claims[2].footing.claims, std::vector<int>{1});
}

TEST(ClaimScript, FaultsHaveLineAndColumn) {
  for (const auto& [text, line, column] : std::vector<std::tuple<std::string, int, int>>{{"r1c1 = 5\n  r1c1 = q\n", 2, 10}, {"let r1 = r1c1\n", 1, 5}, {"footing #1\nr1c1 = 5", 1, 10}, {"balance x = r1 : r1\n", 1, 20},
                                                                                         {"let a1 = r1c1; let a1 = r1c2", 1, 20}, {"r1c1 = 5; footing y", 1, 19}}) {
    const auto script = parse_script(Position(standard_shape()), text);
    ASSERT_FALSE(script.is_ok()) << text;
    EXPECT_EQ(script.error().where.line, line) << text << ": " << script.error().message;
    EXPECT_EQ(script.error().where.column, column) << text << ": " << script.error().message;
  }
}

}  // namespace
}  // namespace cp
