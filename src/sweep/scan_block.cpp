// SPDX-License-Identifier: Apache-2.0
#include "sweep/scan_block.h"

#include <algorithm>

#include "grid/notation.h"
#include "scan/record_json.h"

namespace cp {

namespace {

constexpr std::string_view kBlanks = " \r\t";

std::string_view trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(kBlanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(kBlanks) - begin + 1);
}

// A field of a table: from `begin` up to a separator, without quotes around it.
std::string_view field_from(std::string_view line, std::size_t begin) {
  std::string_view field = trimmed(line.substr(begin, std::min(line.find_first_of(",;\t", begin), line.size()) - begin));
  if (field.size() >= 2 && field.front() == '"' && field.back() == '"') field = field.substr(1, field.size() - 2);
  return field;
}

bool is_header(std::string_view field) {
  static constexpr std::string_view kWord = "puzzle";
  return std::equal(field.begin(), field.end(), kWord.begin(), kWord.end(), [](char a, char b) { return (a | 0x20) == b; });
}

Result<Position> puzzle_in(std::string_view line) {
  auto first = parse_position(field_from(line, 0));
  const std::size_t tab = line.find('\t');
  if (first || tab == std::string_view::npos) return first;
  auto second = parse_position(field_from(line, tab + 1));
  return second ? std::move(second) : std::move(first);
}

}  // namespace

BlockAnswer answer_block(const ScanBlock& block, const SurveyWish& wish) {
  BlockAnswer answer;
  answer.number = block.number;
  answer.end = block.end;
  std::uint64_t number = block.first_line;
  for (const std::string& line : block.lines) {
    const std::string_view text = trimmed(line);
    const std::uint64_t own = number++;
    if (text.empty() || text.front() == '#') continue;
    if (own == 1 && is_header(field_from(text, 0))) continue;
    const auto puzzle = puzzle_in(text);
    if (puzzle) {
      answer.text += record_line(survey_puzzle(*puzzle, wish), own);
      ++answer.count.puzzles;
    } else {
      answer.text += error_line(puzzle.error(), own);
      ++answer.count.faults;
    }
    answer.text += '\n';
  }
  return answer;
}

std::size_t lines_in_block(const SurveyWish& wish) {
  switch (wish.depth) {
    case SurveyDepth::kForm: return 1024;
    case SurveyDepth::kBasics: return 128;
    case SurveyDepth::kBalances: return 16;
    case SurveyDepth::kFull: return 2;
  }
  return 1;
}

std::optional<ScanBlock> BlockReader::next() {
  ScanBlock block;
  block.number = number_;
  block.first_line = source_.place().line + 1;
  std::string line;
  while (block.lines.size() < lines_ && source_.next(line)) block.lines.push_back(line);
  if (block.lines.empty()) return std::nullopt;
  block.end = source_.place();
  ++number_;
  return block;
}

}  // namespace cp
