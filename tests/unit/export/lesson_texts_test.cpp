// SPDX-License-Identifier: Apache-2.0
// The files of a lesson that are plain text. What outside programs say to them is tested under tests/cli and tests/web.
#include <gtest/gtest.h>

#include "export/captions.h"
#include "export/scene_times.h"
#include "export/script_text.h"
#include "support/count_of.h"
#include "support/sample_lesson.h"

namespace cp {
namespace {

using support::count_of;

Document three_scenes() {
  Document document;
  document.title = "One & two";
  document.puzzle = "..3.1......4.1..";
  document.scenes.resize(3);
  document.scenes[0].heading = "First";
  document.scenes[0].paragraphs = {{"One two three. Four five?", ""}, {"Is 3 < 4? Yes.", "Yes"}};
  document.scenes[0].seconds = 7;
  document.scenes[1].heading = "Second --> part";
  document.scenes[1].paragraphs = {{"A sentence of many words that needs more than one line of forty-two characters and more than one cue besides.", ""}};
  document.scenes[1].seconds = 70;
  document.scenes[2].heading = "Third";
  document.scenes[2].note = "Wait for it.";
  return document;
}

TEST(SceneTimes, FollowOneAnother) {
  const std::vector<SceneTime> times = scene_times(three_scenes());
  ASSERT_EQ(times.size(), 3U);
  EXPECT_EQ(times[0].start, 0);
  EXPECT_EQ(times[1].start, 7);
  EXPECT_EQ(times[2].start, 77);
  EXPECT_EQ(times[2].seconds, kShortestScene);  // one word, no time given
  EXPECT_EQ(length_in_seconds(times), 77 + kShortestScene);
}

// 140 words a minute are 42 words in 18 seconds (document.h; common practice).
TEST(SceneTimes, ComeFromTheWordsWhenNoneIsGiven) {
  Document document = three_scenes();
  std::string text;
  for (int i = 0; i < 41; ++i) text += "word ";
  document.scenes[0].seconds = 0;
  document.scenes[0].paragraphs = {{text + ".", ""}};  // heading, 41 words and a stop that stands alone
  EXPECT_EQ(scene_times(document)[0].seconds, speaking_seconds(43));
  EXPECT_EQ(speaking_seconds(42), 18);
}

TEST(SceneTimes, ClocksAreWrittenAsPeopleDo) {
  EXPECT_EQ(clock_text(7), "0:07");
  EXPECT_EQ(clock_text(750), "12:30");
  EXPECT_EQ(clock_text(3723), "1:02:03");
  EXPECT_EQ(clock_text(7, true), "0:00:07");
}

TEST(Sentences, EndAtStopsOnly) {
  Scene scene;
  scene.paragraphs = {{"In r3c4.5 nothing ends. \"Really?\" Yes! And on", ""}};
  const std::vector<std::string> wanted = {"In r3c4.5 nothing ends.", "\"Really?\"", "Yes!", "And on"};
  EXPECT_EQ(spoken_sentences(scene), wanted);
}

TEST(Sentences, KnowTheStopsOfOtherScripts) {
  Scene scene;
  scene.paragraphs = {{"\u4e00\u4e8c\u3002\u4e09\u56db\u3002", ""}, {"\u0647\u0644 \u0646\u0639\u0645\u061f \u0646\u0639\u0645.", ""}};
  EXPECT_EQ(spoken_sentences(scene).size(), 4U);
}

TEST(Sentences, FirstWordsAreWholeSentences) {
  const Document document = three_scenes();
  EXPECT_EQ(first_words(document.scenes[0], 3), "One two three.");
  EXPECT_EQ(first_words(document.scenes[0], 5), "One two three. Four five?");
  EXPECT_EQ(first_words(document.scenes[1], 3), document.scenes[1].paragraphs[0].text);  // at least one sentence
  EXPECT_EQ(first_words(document.scenes[2], 3), "");
}

TEST(Captions, AreEscapedAndInOrder) {
  const std::string text = captions_vtt(three_scenes());
  EXPECT_TRUE(text.starts_with("WEBVTT - One &amp; two\n\n1-1\n00:00:00.000 --> "));
  EXPECT_NE(text.find("Is 3 &lt; 4?"), std::string::npos);
  std::string last = "00:00:00.000";
  int cues = 0;
  for (auto at = text.find(" --> "); at != std::string::npos; at = text.find(" --> ", at + 5), ++cues) {
    EXPECT_EQ(text.substr(at - 12, 12), last);  // the cues of these scenes leave no gap
    last = text.substr(at + 5, 12);
  }
  EXPECT_EQ(last, "00:01:17.000");
  EXPECT_GE(cues, 6);
}

TEST(Captions, HaveTwoLinesOfFortyTwoCharactersAtMost) {
  const std::string text = captions_vtt(support::sample_lesson());
  int lines = 0;
  for (std::size_t at = 0; at < text.size();) {
    const auto end = text.find('\n', at);
    const std::string line = text.substr(at, end - at);
    if (line.find(" --> ") != std::string::npos || line.empty()) lines = 0;
    else if (at > 0) {
      EXPECT_LE(++lines, 2) << line;
      EXPECT_LE(line.size(), 42U + 20U) << line;  // entities are longer than what they show
    }
    at = end + 1;
  }
  EXPECT_GT(count_of(text, " --> "), 20);
}

TEST(Chapters, HaveOneCueAScene) {
  const std::string text = chapters_vtt(three_scenes());
  EXPECT_EQ(text,
            "WEBVTT - One &amp; two\n\n1\n00:00:00.000 --> 00:00:07.000\nFirst\n\n2\n00:00:07.000 --> 00:01:17.000\nSecond --&gt; part\n\n3\n00:01:17.000 --> "
            "00:01:22.000\nThird\n");
  EXPECT_EQ(chapter_list(three_scenes()), "0:00 First\n0:07 Second --> part\n1:17 Third\n");
}

TEST(Script, HoldsWordsNotesAndAnswers) {
  Document document = three_scenes();
  document.scenes[1].exercises.push_back({"Where?", "There.", {}, {}, {}});
  const std::string text = script_markdown(document);
  for (const std::string_view part : {"# One \\& two\n", "## 1\\. First\n", "*0:07 (70 s)*", "*Yes*", "> **Note for the teacher:** Wait for it.", "**Question 1:** Where?", "> **Answer:** There."}) {
    EXPECT_NE(text.find(part), std::string::npos) << part << "\n" << text;
  }
  EXPECT_TRUE(text.ends_with("\n") && !text.ends_with("\n\n"));
}

TEST(Description, HoldsThePuzzleAndTheChapters) {
  Document document = three_scenes();
  document.language = "de";
  const std::string text = description_text(document);
  EXPECT_NE(text.find("R\u00e4tsel:\n..3.1......4.1..\n"), std::string::npos);
  EXPECT_NE(text.find("Kapitel:\n0:00 First\n"), std::string::npos);
}

}  // namespace
}  // namespace cp
