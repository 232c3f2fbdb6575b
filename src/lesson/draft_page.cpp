// SPDX-License-Identifier: Apache-2.0
#include "lesson/draft_page.h"

#include <algorithm>

#include "base/text.h"

namespace cp {

namespace {

constexpr std::size_t kWidth = 110;  // bytes a line

std::vector<std::string> wrapped_lines(const std::string& text) {
  std::vector<std::string> lines;
  std::string line;
  for (const std::string& word : split(text, ' ')) {
    if (word.empty()) continue;
    if (!line.empty() && line.size() + 1 + word.size() > kWidth) {
      lines.push_back(line);
      line.clear();
    }
    line += (line.empty() ? "" : " ") + word;
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

bool is_letter(char letter) { return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (static_cast<unsigned char>(letter) & 0x80U) != 0; }

}  // namespace

void DraftScene::add(WrittenLine::Kind kind, const std::string& text) {
  if (text.empty()) return;
  const bool is_answer = kind == WrittenLine::Kind::kAnswer && !scene_.lines.empty() && scene_.lines.back().kind == WrittenLine::Kind::kQuestion;
  if (!scene_.lines.empty() && !is_answer && (kind == WrittenLine::Kind::kWords || scene_.lines.back().kind != kind)) scene_.lines.push_back({WrittenLine::Kind::kBreak, {}, {}, 0, 0});
  for (std::string& line : wrapped_lines(text)) scene_.lines.push_back({kind, {}, std::move(line), 0, 0});
}

void DraftScene::say(const std::string& text) { add(WrittenLine::Kind::kWords, text); }

void DraftScene::say(const Paragraph& paragraph) {
  std::string text = paragraph.text;
  for (std::size_t at = paragraph.term.empty() ? std::string::npos : text.find(paragraph.term); at != std::string::npos; at = text.find(paragraph.term, at + 1)) {
    const std::size_t end = at + paragraph.term.size();
    if ((at > 0 && is_letter(text[at - 1])) || (end < text.size() && is_letter(text[end]))) continue;
    text.insert(end, "*");
    text.insert(at, "*");
    break;
  }
  say(text);
}

void DraftScene::direct(std::string name, std::string text) {
  using Kind = WrittenLine::Kind;
  if (!scene_.lines.empty() && scene_.lines.back().kind != Kind::kDirective) scene_.lines.push_back({Kind::kBreak, {}, {}, 0, 0});
  scene_.lines.push_back({Kind::kDirective, std::move(name), std::move(text), 0, 0});
}

WrittenScene DraftScene::finish() { return std::move(scene_); }

}  // namespace cp
