// SPDX-License-Identifier: Apache-2.0
// Lessons as text: read, printed, read again; what is wrong is named with its place.
#include "lesson/written_lesson.h"

#include <gtest/gtest.h>

#include "base/rng.h"
#include "lesson/build.h"

namespace cp {
namespace {

const std::string kHead =
    "counterpoise lesson 1\n"
    "title: A small one\n"
    "puzzle: ..3.1......4.1..\n";

std::string with(const std::string& lines) { return kHead + "\n== First\n" + lines + "\n"; }

TEST(WrittenLesson, IsReadWithAllItsParts) {
  const auto lesson = parse_lesson(
      "counterpoise lesson 1\n% mine\nlevel: 2\ntitle:  The   corners \npuzzle: ..3.1......4.1..\nneeds: single, locked\nteaches: balance\nlanguage: de\nminutes: 12\n"
      "idea: balance\nsource: own\nlicence: CC0\n\n\n== One\n\n\nWords for *all*\ngo on.\n\n\nMore.\n| a note\n? What?\n! This.\n\n@singles\n\\@ not a directive\n== Two\n@time 1m30s\n");
  ASSERT_TRUE(lesson.is_ok()) << lesson.error().message;
  EXPECT_EQ(lesson->title, "The   corners");
  EXPECT_EQ(lesson->level, 2);
  EXPECT_EQ(lesson->needs, (std::vector<std::string>{"single", "locked"}));
  ASSERT_EQ(lesson->scenes.size(), 2U);
  EXPECT_EQ(lesson->scenes[0].lines.back().text, "@ not a directive");
  const std::string text = print_lesson(*lesson);
  const auto again = parse_lesson(text);
  ASSERT_TRUE(again.is_ok());
  EXPECT_EQ(*again, *lesson);
  EXPECT_EQ(print_lesson(*again), text);
  EXPECT_NE(text.find("% mine\ntitle: The   corners\n"), std::string::npos);
}

struct Wrong {
  const char* text;
  int line;
  int column;
  const char* message;
};

TEST(WrittenLesson, SaysWhatIsWrongAndWhere) {
  const std::vector<Wrong> list = {
      {"", 1, 1, "the lesson is empty"},
      {"hello\n", 1, 1, "this is no lesson"},
      {"counterpoise lesson 2\n", 1, 1, "this lesson has a version that is not known here"},
      {"counterpoise lesson 1\ntitel: x\n", 2, 1, "'titel' is not known here"},
      {"counterpoise lesson 1\ntitle: x\ntitle: y\n", 3, 1, "'title' was given before"},
      {"counterpoise lesson 1\ntitle: x\n\n== A\n", 4, 1, "the lesson names no puzzle"},
      {"counterpoise lesson 1\npuzzle: ..3.1......4.1..\n== A\n", 3, 1, "the lesson has no title"},
      {"counterpoise lesson 1\ntitle: x\npuzzle: ..3.1.\n", 3, 14, nullptr},
      {"counterpoise lesson 1\ntitle: x\npuzzle: ..3.1......4.1..\nlevel: 9\n", 4, 8, "a number from 1 to 5 is wanted here"},
      {"counterpoise lesson 1\ntitle: x\npuzzle: ..3.1......4.1..\nneeds: a, B c\n", 4, 11, "'B c' cannot be the name of a technique or an idea"},
      {"counterpoise lesson 1\ntitle: x\npuzzle: ..3.1......4.1..\nlanguage: deutsch!\n", 4, 11, "'deutsch!' is no name of a language"},
      {"counterpoise lesson 1\ntitle: x\npuzzle: ..3.1......4.1..\n", 3, 1, "the lesson has no scene"},
      {"counterpoise lesson 1\ntitle: x\npuzzle: ..3.1......4.1..\nwords\n", 4, 1, "a line such as title: The ring is wanted here"},
  };
  for (const Wrong& wrong : list) {
    const auto lesson = parse_lesson(wrong.text);
    ASSERT_FALSE(lesson.is_ok()) << wrong.text;
    if (wrong.message != nullptr) { EXPECT_EQ(lesson.error().message, wrong.message); }
    EXPECT_EQ(lesson.error().where.line, wrong.line) << wrong.text << lesson.error().message;
    EXPECT_EQ(lesson.error().where.column, wrong.column) << wrong.text << lesson.error().message;
    EXPECT_FALSE(lesson.error().hint.empty()) << wrong.text;
  }
}

TEST(WrittenLesson, SaysWhatIsWrongWithADirective) {
  const std::vector<Wrong> list = {
      {"@dance", 6, 1, "there is no directive @dance"},
      {"@basics r1c1", 6, 9, "@basics stands alone; 'r1c1' is too much"},
      {"@apply single, magic", 6, 16, "'magic' is not a technique"},
      {"@apply", 6, 1, "@apply needs the names of techniques"},
      {"@step r1c1 = 9", 6, 14, "'9' is no digit of this grid"},
      {"@step r1c1", 6, 7, "'r1c1' is no conclusion"},
      {"@step r9c1 = 2", 6, 7, nullptr},
      {"@step r1c1 = 2 by magic", 6, 19, "'magic' is neither a technique nor a balance of this lesson"},
      {"@balance r1 : c1", 6, 10, "the pans are missing"},
      {"@balance left r1 right c1", 6, 26, "the balance needs a name"},
      {"@balance left r1 right r1 name x", 6, 10, "the two pans take each other away"},
      {"@balance left r1 right c9 name x", 6, 24, nullptr},
      {"@balance left r1 right c1 name r1", 6, 32, "'r1' cannot be a name"},
      {"@show ring houses", 6, 7, "no balance is called 'ring' yet"},
      {"@claim r1c1 = 7", 6, 15, nullptr},
      {"@claim r1c1 = 2 footing nowhere", 6, 25, nullptr},
      {"@board sideways", 6, 8, "'sideways' is no wish for the board"},
      {"@board digits 7", 6, 15, "'7' is no digit of this grid"},
      {"@time soon", 6, 7, "'soon' is no time"},
      {"@time 2h", 6, 7, "'2h' is no time"},
      {"@grid 12", 6, 8, nullptr},
      {"@singles\n@aside 1234341221434321", 7, 1, "@aside comes too late"},
      {"! forty-two", 6, 1, "an answer without a question"},
  };
  for (const Wrong& wrong : list) {
    const auto lesson = parse_lesson(with(wrong.text));
    ASSERT_FALSE(lesson.is_ok()) << wrong.text;
    if (wrong.message != nullptr) { EXPECT_EQ(lesson.error().message, wrong.message); }
    EXPECT_EQ(lesson.error().where.line, wrong.line) << wrong.text << ": " << lesson.error().message;
    EXPECT_EQ(lesson.error().where.column, wrong.column) << wrong.text << ": " << lesson.error().message;
  }
}

TEST(WrittenLesson, RefusesWhatIsNoText) {
  const auto lesson = parse_lesson(with("words \xC3( here"));
  ASSERT_FALSE(lesson.is_ok());
  EXPECT_EQ(lesson.error().message, "a character here is no text");
  EXPECT_EQ(lesson.error().where.line, 6);
  EXPECT_EQ(lesson.error().where.column, 7);
  EXPECT_FALSE(parse_lesson(with(std::string("a\0b", 3))).is_ok());
  EXPECT_TRUE(parse_lesson(with("\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D \xE6\x95\xB0 \xF0\x9F\x99\x82")).is_ok());
}

// Random texts made of pieces of lessons: whatever is read prints to a text that reads the same, and nothing crashes.
TEST(WrittenLesson, RandomTextsComeBackTheSame) {
  const std::vector<std::string> pieces = {"counterpoise lesson 1\n", "title: x\n", "puzzle: ..3.1......4.1..\n", "== A\n", "==\n", "\n", "\n\n", "words *and* more\n", "@singles\n", "@basics\n",
                                           "@step r1c1 = 2\n", "@balance left r1 right c1 name x\n", "@show x fit\n", "@claim r1c1 = 2 footing x\n", "| note\n", "|\n", "? ask\n", "! tell\n", "!\n", "% c\n", "\\\n",
                                           "\\\\\n", "\\@x\n", "\\== y\n", "@board focus r1; digits 12\n", "@let g = r1c1 b2\n", "@time 5s\n", "@aside ..3.1......4.1..\n", "@solution\n", "\t \n", "level: 3\n",
                                           "language: he\n", "needs: a,b\n", "x", ":", "=", "@", "\xC3\xA4", "\r\n", " ", "999999999999999999999", "{", "}"};
  int read = 0;
  for (std::uint64_t seed = 1; seed <= 4000; ++seed) {
    Rng rng(seed);
    std::string text = rng.below(8) != 0 ? kHead + "== Start\n" : std::string();
    const std::uint32_t count = rng.below(12);
    for (std::uint32_t i = 0; i < count; ++i) text += pieces[rng.below(static_cast<std::uint32_t>(pieces.size()))];
    if (rng.below(4) == 0 && !text.empty()) text[rng.below(static_cast<std::uint32_t>(text.size()))] = static_cast<char>(rng.below(256));
    const auto lesson = parse_lesson(text);
    if (!lesson) {
      EXPECT_GT(lesson.error().where.line, 0) << text;
      EXPECT_FALSE(lesson.error().message.empty());
      continue;
    }
    ++read;
    const std::string printed = print_lesson(*lesson);
    const auto again = parse_lesson(printed);
    ASSERT_TRUE(again.is_ok()) << "seed " << seed << ": " << again.error().message << "\n" << printed;
    ASSERT_EQ(*again, *lesson) << "seed " << seed << "\n" << text << "\n---\n" << printed;
    ASSERT_EQ(print_lesson(*again), printed) << seed;
  }
  EXPECT_GT(read, 300);
}

}  // namespace
}  // namespace cp
