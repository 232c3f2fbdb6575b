// SPDX-License-Identifier: Apache-2.0
// The catalogue of sentences: complete in every language, places alike, and filled as words.h says.
#include "speak/words.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "speak/speaker.h"

namespace cp {
namespace {

// The names in braces: "{^#n?one:other {d}}" has n and d.
std::set<std::string> places(std::string_view text) {
  std::set<std::string> names;
  for (std::size_t at = text.find('{'); at != std::string_view::npos; at = text.find('{', at + 1)) {
    std::string name;
    for (std::size_t i = at + 1; i < text.size() && text[i] != '}' && text[i] != '?'; ++i) {
      if (text[i] != '^' && text[i] != '#') name += text[i];
    }
    names.insert(name);
  }
  return names;
}

TEST(Words, NoKeyTwice) {
  for (const std::string_view language : word_languages()) {
    std::set<std::string_view> seen;
    for (const Phrase& phrase : phrases(language)) EXPECT_TRUE(seen.insert(phrase.key).second) << language << ": " << phrase.key;
    EXPECT_GT(seen.size(), 150U);
  }
}

TEST(Words, EverySentenceHasItsTranslation) {
  const Words german("de");
  for (const Phrase& phrase : phrases("en")) EXPECT_TRUE(german.has(phrase.key)) << phrase.key;
}

// A translation may leave a place out, but cannot know others.
TEST(Words, TranslationsHaveNoPlacesOfTheirOwn) {
  std::map<std::string_view, std::string_view> english;
  for (const Phrase& phrase : phrases("en")) english[phrase.key] = phrase.text;
  for (const Phrase& phrase : phrases("de")) {
    const auto original = english.find(phrase.key);
    if (original == english.end()) continue;
    const std::set<std::string> known = places(original->second);
    for (const std::string& name : places(phrase.text)) EXPECT_TRUE(known.count(name) != 0) << phrase.key << " has {" << name << "}";
  }
}

TEST(Words, PlacesAreFilled) {
  const Words words;
  EXPECT_EQ(words.say("page.scene", {{"n", 3}, {"count", 12}}), "Scene 3 of 12");
  EXPECT_EQ(words.say("cells.group", {{"n", 1}, {"house", std::string("box 1")}}), "one cell in box 1");
  EXPECT_EQ(words.say("cells.group", {{"n", 4}, {"house", std::string("box 1")}}), "four cells in box 1");
  EXPECT_EQ(Words("de-AT").say("page.scene", {{"n", 3}, {"count", 12}}), "Szene 3 von 12");
  EXPECT_EQ(Words("fr").language(), "en");
  EXPECT_EQ(words.say("no.such.key"), "no.such.key");
}

TEST(Words, VariantsFollowTheSeed) {
  const Words words;
  std::set<std::string> seen;
  for (std::uint64_t seed = 0; seed < 12; ++seed) seen.insert(words.vary("draft.hook", seed, {{"n", 25}, {"side", 9}}));
  EXPECT_EQ(seen.size(), 3U);
  EXPECT_EQ(words.vary("draft.hook", 5, {{"n", 25}, {"side", 9}}), words.vary("draft.hook", 5, {{"n", 25}, {"side", 9}}));
  EXPECT_EQ(words.vary("draft.summary", 7), "Summary");
}

TEST(Words, DirectionFollowsFromTheLanguage) {
  EXPECT_TRUE(is_right_to_left("he"));
  EXPECT_TRUE(is_right_to_left("ar-EG"));
  EXPECT_FALSE(is_right_to_left("de"));
}

CellSet cells_from(std::initializer_list<const char*> names) {
  CellSet cells;
  for (const char* name : names) cells.add(standard_shape().parse_cell(name).value());
  return cells;
}

// Cells as a person names them. Expected words are our own wording.
TEST(Speaker, NamesCellsAsAPersonWould) {
  const Speaker speaker("en");
  const Shape& shape = standard_shape();
  const CellSet open = cells_from({"r4c1", "r5c2", "r1c1", "r1c9", "r9c9"});
  EXPECT_EQ(speaker.cells(shape, cells_from({"r4c1"}), open), "r4c1");
  EXPECT_EQ(speaker.cells(shape, cells_from({"r4c1", "r5c2"}), open), "the two open cells of box 4 (r4c1 and r5c2)");
  EXPECT_EQ(speaker.cells(shape, cells_from({"r4c1", "r5c3"}), open), "the two cells in box 4 (r4c1 and r5c3)");
  EXPECT_EQ(speaker.cells(shape, cells_from({"r1c1", "r9c9"}), open), "r1c1 and r9c9");
  EXPECT_EQ(speaker.cells(shape, cells_from({"r1c1", "r1c2", "r2c1", "r2c2", "r8c8", "r8c9", "r9c8"}), open), "four cells in box 1 and three in box 9");
  EXPECT_EQ(Speaker("de").cells(shape, cells_from({"r4c1", "r5c2"}), open), "die zwei offenen Felder von Block 4 (r4c1 und r5c2)");
  EXPECT_EQ(Speaker("de").houses(shape, {shape.row(2), shape.row(6), shape.box(3)}), "Zeilen 3 und 7 mit Block 4");
}

}  // namespace
}  // namespace cp
