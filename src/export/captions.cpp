// SPDX-License-Identifier: Apache-2.0
#include "export/captions.h"

#include <algorithm>
#include <vector>

#include "base/text.h"
#include "export/scene_times.h"

namespace cp {

namespace {

constexpr std::size_t kLineLength = 42;  // characters; two lines a cue. Common practice of broadcasters, no published source.

// Characters, not bytes.
std::size_t letters_in(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char letter) { return (static_cast<unsigned char>(letter) & 0xC0U) != 0x80U; }));
}

// The words of a sentence in lines; a word longer than a line stands alone.
std::vector<std::string> lines_of(const std::string& sentence) {
  std::vector<std::string> lines;
  std::string text = sentence;
  std::replace(text.begin(), text.end(), '\n', ' ');
  for (const std::string& word : split(text, ' ')) {
    if (word.empty()) continue;
    if (lines.empty() || letters_in(lines.back()) + 1 + letters_in(word) > kLineLength) {
      lines.push_back(word);
    } else {
      lines.back() += " " + word;
    }
  }
  return lines;
}

// A sentence in cues of one or two lines. A sentence of three lines gives two cues, not two lines and a stray word.
std::vector<std::string> cues_of(const std::string& sentence) {
  const std::vector<std::string> lines = lines_of(sentence);
  std::vector<std::string> cues;
  for (std::size_t i = 0; i < lines.size(); i += 2) cues.push_back(i + 1 < lines.size() ? lines[i] + "\n" + lines[i + 1] : lines[i]);
  return cues;
}

// & < > have a meaning in cues; "-->" can not occur after that.
std::string cue_text(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    if (letter == '&') out += "&amp;";
    else if (letter == '<') out += "&lt;";
    else if (letter == '>') out += "&gt;";
    else out += letter;
  }
  return out;
}

std::string time_stamp(long long milliseconds) {
  const auto padded = [](long long number, std::size_t width) {
    std::string text = to_text(number);
    return std::string(width > text.size() ? width - text.size() : 0, '0') + text;
  };
  const long long seconds = milliseconds / 1000;
  return padded(seconds / 3600, 2) + ":" + padded(seconds / 60 % 60, 2) + ":" + padded(seconds % 60, 2) + "." + padded(milliseconds % 1000, 3);
}

void add_cue(std::string& out, const std::string& name, long long from, long long to, const std::string& text) {
  out += "\n" + name + "\n" + time_stamp(from) + " --> " + time_stamp(to) + "\n" + cue_text(text) + "\n";
}

std::string header(const Document& document) {
  std::string title = document.title;
  std::replace(title.begin(), title.end(), '\n', ' ');
  return "WEBVTT - " + cue_text(title) + "\n";
}

// The words of one scene, shared out over its time.
void add_scene(std::string& out, const Scene& scene, const SceneTime& time, const std::string& name) {
  std::vector<std::string> cues;
  for (const std::string& sentence : spoken_sentences(scene)) {
    for (std::string& cue : cues_of(sentence)) cues.push_back(std::move(cue));
  }
  int words = 0;
  for (const std::string& cue : cues) words += word_count(cue);
  const long long length = 1000LL * time.seconds;
  int said = 0;
  for (std::size_t i = 0; i < cues.size(); ++i) {
    const long long from = 1000LL * time.start + length * said / words;
    said += word_count(cues[i]);
    const long long to = 1000LL * time.start + length * said / words;
    if (to > from) add_cue(out, name + "-" + to_text(static_cast<int>(i) + 1), from, to, cues[i]);
  }
}

}  // namespace

std::string captions_vtt(const Document& document) {
  std::string out = header(document);
  const std::vector<SceneTime> times = scene_times(document);
  for (std::size_t i = 0; i < times.size(); ++i) add_scene(out, document.scenes[i], times[i], to_text(static_cast<int>(i) + 1));
  return out;
}

std::string chapters_vtt(const Document& document) {
  std::string out = header(document);
  const std::vector<SceneTime> times = scene_times(document);
  for (std::size_t i = 0; i < times.size(); ++i) {
    std::string heading = document.scenes[i].heading;
    std::replace(heading.begin(), heading.end(), '\n', ' ');
    add_cue(out, to_text(static_cast<int>(i) + 1), 1000LL * times[i].start, 1000LL * (times[i].start + times[i].seconds), heading);
  }
  return out;
}

}  // namespace cp
