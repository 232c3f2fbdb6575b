// SPDX-License-Identifier: Apache-2.0
#include "lesson/document.h"

#include <algorithm>

namespace cp {

int word_count(const std::string& text) {
  int count = 0;
  bool inside = false;
  for (const char character : text) {
    const bool is_blank = character == ' ' || character == '\n' || character == '\t' || character == '\r';
    if (!is_blank && !inside) ++count;
    inside = !is_blank;
  }
  return count;
}

int word_count(const Scene& scene) {
  int count = word_count(scene.heading);
  for (const Paragraph& paragraph : scene.paragraphs) count += word_count(paragraph.text);
  for (const Exercise& exercise : scene.exercises) count += word_count(exercise.question);
  return count;
}

int speaking_seconds(int words) { return std::max(kShortestScene, (words * 60 + kWordsAMinute - 1) / kWordsAMinute); }

int total_seconds(const Document& document) {
  int total = 0;
  for (const Scene& scene : document.scenes) total += scene.seconds;
  return total;
}

}  // namespace cp
