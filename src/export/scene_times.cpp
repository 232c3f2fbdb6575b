// SPDX-License-Identifier: Apache-2.0
#include "export/scene_times.h"

#include <algorithm>
#include <string_view>

#include "base/text.h"

namespace cp {

namespace {

int words_in(const Scene& scene) {
  int words = word_count(scene.heading);
  for (const std::string& sentence : spoken_sentences(scene)) words += word_count(sentence);
  return words;
}

bool is_blank(char letter) { return letter == ' ' || letter == '\n' || letter == '\t' || letter == '\r'; }

// Marks after which a sentence may be over, in the scripts that have them: . ! ? and their Arabic, Devanagari, Chinese and
// full-width relatives (Unicode property Sentence_Terminal, the common ones).
std::size_t length_of_stop(std::string_view text, std::size_t at) {
  if (text[at] == '.' || text[at] == '!' || text[at] == '?') return 1;
  for (const std::string_view stop : {"\xD8\x9F", "\xDB\x94"}) {
    if (text.substr(at, 2) == stop) return 2;
  }
  for (const std::string_view stop : {"\xE3\x80\x82", "\xE0\xA5\xA4", "\xEF\xBC\x81", "\xEF\xBC\x9F"}) {
    if (text.substr(at, 3) == stop) return 3;
  }
  return 0;
}

// The end of the sentence that starts at `from`: behind its stop and any closing quotes. A stop needs white space after it
// ("r3c4.5" is no end), unless the script sets none.
std::size_t end_of_sentence(std::string_view text, std::size_t from) {
  for (std::size_t at = from; at < text.size();) {
    const std::size_t stop = length_of_stop(text, at);
    if (stop == 0) {
      ++at;
      continue;
    }
    at += stop;
    while (at < text.size() && (text[at] == '"' || text[at] == '\'' || text[at] == ')')) ++at;
    if (stop == 3 || at == text.size() || is_blank(text[at])) return at;
  }
  return text.size();
}

void add_sentences(std::string_view text, std::vector<std::string>& sentences) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = end_of_sentence(text, at);
    const std::string_view sentence = trimmed(text.substr(at, end - at));
    if (!sentence.empty()) sentences.emplace_back(sentence);
    at = end;
  }
}

}  // namespace

std::vector<std::string> spoken_sentences(const Scene& scene) {
  std::vector<std::string> sentences;
  for (const Paragraph& words : scene.paragraphs) add_sentences(words.text, sentences);
  for (const Exercise& exercise : scene.exercises) add_sentences(exercise.question, sentences);
  return sentences;
}

std::string first_words(const Scene& scene, int most_words) {
  std::string text;
  int words = 0;
  for (const std::string& sentence : spoken_sentences(scene)) {
    words += word_count(sentence);
    if (!text.empty() && words > most_words) break;
    text += (text.empty() ? "" : " ") + sentence;
  }
  return text;
}

std::vector<SceneTime> scene_times(const Document& document) {
  std::vector<SceneTime> times;
  int start = 0;
  for (const Scene& scene : document.scenes) {
    const int seconds = std::max(1, scene.seconds > 0 ? scene.seconds : speaking_seconds(words_in(scene)));
    times.push_back({start, seconds});
    start += seconds;
  }
  return times;
}

int length_in_seconds(const std::vector<SceneTime>& times) { return times.empty() ? 0 : times.back().start + times.back().seconds; }

std::string clock_text(int seconds, bool has_hours) {
  const auto two = [](int number) { return (number < 10 ? "0" : "") + to_text(number); };
  const int hours = seconds / 3600;
  const int minutes = seconds / 60 % 60;
  if (hours == 0 && !has_hours) return to_text(minutes) + ":" + two(seconds % 60);
  return to_text(hours) + ":" + two(minutes) + ":" + two(seconds % 60);
}

}  // namespace cp
