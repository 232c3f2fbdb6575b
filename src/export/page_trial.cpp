// SPDX-License-Identifier: Apache-2.0
#include "export/page_trial.h"

#include "base/text.h"
#include "grid/notation.h"

namespace cp {

namespace {

// Nothing below holds quotes, backslashes or '<': names of cells, digits, grids of candidates.
std::string quoted(const std::string& text) { return "\"" + text + "\""; }

std::string on_one_line(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    const bool is_blank = letter == ' ' || letter == '\n';
    if (is_blank && (out.empty() || out.back() == ' ')) continue;
    out += is_blank ? ' ' : letter;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::string candidates(const Shape& shape, const std::vector<Candidate>& list) {
  std::vector<std::string> items;
  for (const Candidate& candidate : list) items.push_back(quoted(shape.name_of(candidate.cell) + "=" + Shape::name_of(candidate.digit)));
  return "[" + joined(items, ",") + "]";
}

// A language tag has letters, digits and '-' only; anything else is dropped.
std::string tag_of(const std::string& language) {
  std::string out;
  for (const char letter : language) {
    const bool is_letter = (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
    if (is_letter || letter == '-' || (letter >= '0' && letter <= '9')) out += letter;
  }
  return out;
}

}  // namespace

std::string page_trial_json(const Document& document) {
  std::vector<std::string> scenes;
  int side = 9;
  for (std::size_t i = 0; i < document.scenes.size(); ++i) {
    if (!document.scenes[i].board) continue;
    const Figure& board = *document.scenes[i].board;
    if (board.position.open().is_empty()) continue;
    const Shape& shape = board.position.shape();
    side = shape.side();
    scenes.push_back(quoted("scene-" + to_text(static_cast<long long>(i) + 1)) + ":{\"position\":" + quoted(on_one_line(to_candidate_text(board.position))) +
                     ",\"out\":" + candidates(shape, board.struck) + ",\"in\":" + candidates(shape, board.placed) + "}");
  }
  return "{\"language\":" + quoted(tag_of(document.language)) + ",\"side\":" + to_text(side) + ",\"scenes\":{" + joined(scenes, ",") + "}}";
}

}  // namespace cp
