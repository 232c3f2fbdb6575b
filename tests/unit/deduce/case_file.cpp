// SPDX-License-Identifier: Apache-2.0
#include "case_file.h"

#include <optional>

#include "base/text.h"
#include "grid/notation.h"

namespace cp::cases {

namespace {

// A case while its lines come in.
struct Draft {
  std::string name;
  std::string shows;
  int line = 0;
  std::string grid;
  std::optional<Position> position;
  std::vector<ExpectedStep> expected;
  bool expects_nothing = false;
};

Error fault(int line, std::string message) {
  return Error{ErrorCode::kBadArgument, "line " + cp::to_text(line) + ": " + std::move(message), "see docs/formats/case.md", TextSpan{0, 0, line, 1}};
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for (const std::string& word : split(text, ' ')) {
    if (!word.empty()) words.push_back(word);
  }
  return words;
}

Result<DigitSet> read_digits(std::string_view text, const Shape& shape, int line) {
  DigitSet digits;
  for (const char character : text) {
    const auto digit = digit_from(character, shape);
    if (!digit) return fault(line, "'" + std::string(1, character) + "' is not a digit");
    digits.add(*digit);
  }
  return digits;
}

class Reader {
 public:
  Result<std::vector<Case>> read(std::string_view text) {
    for (const std::string& raw : lines_of(text)) {
      ++line_;
      const std::string_view whole = std::string_view(raw).substr(0, raw.find('#'));
      const std::string_view line = trimmed(whole);
      if (line.empty()) continue;
      const bool continues = whole.front() == ' ';
      if (const auto error = continues ? take_more(line) : take(line)) return *error;
    }
    if (const auto error = finish()) return *error;
    return std::move(cases_);
  }

 private:
  using Fault = std::optional<Error>;

  static std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines(1);
    for (const char character : text) {
      if (character == '\n') lines.emplace_back();
      else lines.back() += character;
    }
    return lines;
  }

  // An indented line goes on with the grid.
  Fault take_more(std::string_view line) {
    if (!draft_ || draft_->position) return fault(line_, "an indented line belongs under 'grid'");
    draft_->grid += std::string(line) + "\n";
    return {};
  }

  Fault take(std::string_view line) {
    const std::size_t gap = line.find(' ');
    const std::string_view key = line.substr(0, gap);
    const std::string_view rest = gap == std::string_view::npos ? "" : trimmed(line.substr(gap));
    if (key == "case") return begin(rest);
    if (!draft_) return fault(line_, "a file starts with a 'case' line");
    if (key == "show") draft_->shows = rest;
    else if (key == "grid") draft_->grid = std::string(rest) + "\n";
    else if (key == "keep") return take_keep(rest);
    else if (key == "strike") return take_strike(rest);
    else if (key == "only") return take_only(rest);
    else if (key == "expect") return take_expect(rest);
    else return fault(line_, "'" + std::string(key) + "' is not a word of this format");
    return {};
  }

  Fault begin(std::string_view name) {
    if (auto error = finish()) return error;
    draft_.emplace();
    draft_->name = name;
    draft_->line = line_;
    return {};
  }

  Fault finish() {
    if (!draft_) return {};
    if (auto error = read_grid()) return error;
    if (draft_->expected.empty() != draft_->expects_nothing) return fault(line_, draft_->name + " expects steps or nothing, not both or neither");
    cases_.push_back({draft_->name, draft_->shows, draft_->line, *draft_->position, draft_->expected});
    draft_.reset();
    return {};
  }

  // The grid has ended when the first line that needs it comes.
  Fault read_grid() {
    if (draft_->position) return {};
    const std::vector<std::string> words = words_of(trimmed(draft_->grid));
    if (words.size() == 2 && words[0] == "empty") {
      const Shape* shape = find_shape(words[1]);
      if (shape == nullptr) return fault(line_, "there is no shape " + words[1]);
      draft_->position.emplace(*shape);
      return {};
    }
    const auto position = parse_position(draft_->grid);
    if (!position) return fault(line_, position.error().message);
    draft_->position = *position;
    return {};
  }

  // keep r1c1 37
  Fault take_keep(std::string_view rest) {
    return with_cell_and_digits(rest, [&](Cell cell, DigitSet digits) { return draft_->position->candidates(cell) - digits; });
  }
  // strike r1c1 37
  Fault take_strike(std::string_view rest) {
    return with_cell_and_digits(rest, [](Cell, DigitSet digits) { return digits; });
  }

  template <typename Struck>
  Fault with_cell_and_digits(std::string_view rest, Struck struck) {
    if (auto error = read_grid()) return error;
    const std::vector<std::string> words = words_of(rest);
    if (words.size() != 2) return fault(line_, "wanted a cell and digits");
    const Shape& shape = draft_->position->shape();
    const auto cell = shape.parse_cell(words[0]);
    if (!cell) return fault(line_, cell.error().message);
    const auto digits = read_digits(words[1], shape, line_);
    if (!digits) return digits.error();
    for (const Digit digit : struck(*cell, *digits)) draft_->position->eliminate({*cell, digit});
    return {};
  }

  // only 5 in r2: r2c3 r2c7
  Fault take_only(std::string_view rest) {
    if (auto error = read_grid()) return error;
    const std::vector<std::string> parts = split(rest, ':');
    const std::vector<std::string> left = words_of(parts.empty() ? "" : parts[0]);
    if (parts.size() != 2 || left.size() != 3 || left[1] != "in") return fault(line_, "wanted 'only DIGITS in HOUSE: CELLS'");
    const Shape& shape = draft_->position->shape();
    const auto digits = read_digits(left[0], shape, line_);
    if (!digits) return digits.error();
    const auto house = shape.parse_house(left[2]);
    if (!house) return fault(line_, house.error().message);
    CellSet kept;
    for (const std::string& word : words_of(parts[1])) {
      const auto cell = shape.parse_cell(word);
      if (!cell) return fault(line_, cell.error().message);
      kept.add(*cell);
    }
    for (const Cell cell : shape.cells(*house) - kept) {
      for (const Digit digit : *digits) draft_->position->eliminate({cell, digit});
    }
    return {};
  }

  // expect r1c3 != 37, r1c5 != 1   |   expect r2c2 = 5   |   expect nothing
  Fault take_expect(std::string_view rest) {
    if (auto error = read_grid()) return error;
    if (rest == "nothing") {
      draft_->expects_nothing = true;
      return {};
    }
    ExpectedStep step;
    const Shape& shape = draft_->position->shape();
    for (const std::string& part : split(rest, ',')) {
      const std::vector<std::string> words = words_of(part);
      if (words.size() != 3 || (words[1] != "=" && words[1] != "!=")) return fault(line_, "wanted 'CELL = DIGIT' or 'CELL != DIGITS'");
      const auto cell = shape.parse_cell(words[0]);
      if (!cell) return fault(line_, cell.error().message);
      const auto digits = read_digits(words[2], shape, line_);
      if (!digits) return digits.error();
      for (const Digit digit : *digits) (words[1] == "=" ? step.placements : step.eliminations).push_back({*cell, digit});
    }
    draft_->expected.push_back(std::move(step));
    return {};
  }

  int line_ = 0;
  std::optional<Draft> draft_;
  std::vector<Case> cases_;
};

}  // namespace

Result<std::vector<Case>> read_cases(std::string_view text) { return Reader().read(text); }

std::string to_text(const Shape& shape, const ExpectedStep& step) {
  std::vector<std::string> parts;
  for (const Candidate& each : step.placements) parts.push_back(shape.name_of(each.cell) + " = " + Shape::name_of(each.digit));
  for (const Candidate& each : step.eliminations) parts.push_back(shape.name_of(each.cell) + " != " + Shape::name_of(each.digit));
  return joined(parts, ", ");
}

}  // namespace cp::cases
