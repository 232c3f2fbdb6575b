// SPDX-License-Identifier: Apache-2.0
#include "shelf/intake.h"

#include <future>

#include "base/text.h"
#include "exact/solve.h"
#include "grid/canonical_form.h"
#include "grid/notation.h"
#include "shelf/ask.h"
#include "shelf/in_parallel.h"
#include "shelf/intake_source.h"

namespace cp {

namespace {

constexpr std::size_t kPieceOfWork = 64;  // lines that a thread takes at a time

struct Block {
  std::vector<RawLine> lines;
  Place after;
  bool is_last = false;
};

bool holds_nothing(std::string_view line) { return trimmed(line).empty() || trimmed(line).starts_with('#'); }

int solutions_of(const Position& position) {
  switch (how_many(position)) {
    case HowMany::kNone: return 0;
    case HowMany::kOne: return 1;
    default: return 2;
  }
}

// Fills in what follows from the puzzle. The fault, if it is none for the shelf.
std::optional<Error> look_at_puzzle(std::string_view text, NewPuzzle& puzzle) {
  const auto position = parse_position(text);
  if (!position) return position.error();
  if (!has_canonical_form(position->shape())) {
    return Error{ErrorCode::kBadPuzzle, "the shelf keeps 4x4, 6x6 and 9x9 puzzles; this one is " + std::string(position->shape().name()), "", {}};
  }
  puzzle.text = givens_line(*position);
  puzzle.givens = static_cast<int>(std::count_if(puzzle.text.begin(), puzzle.text.end(), [](char letter) { return letter != '.'; }));
  if (puzzle.givens == 0) return Error{ErrorCode::kBadPuzzle, "no digit is given", "", {}};
  const auto givens = parse_position(puzzle.text);  // without candidates and digits placed later
  puzzle.solutions = solutions_of(*givens);
  puzzle.canonical = canonical_form(*givens).text;
  return std::nullopt;
}

// PUZZLE, NAME<TAB>PUZZLE, or PUZZLE and something behind a separator.
std::optional<Error> look_at_plain(const std::string& text, NewPuzzle& puzzle) {
  auto fault = look_at_puzzle(text, puzzle);
  if (!fault) return fault;
  const auto tab = text.find('\t');
  if (tab != std::string::npos) {
    const std::string_view rest = std::string_view(text).substr(tab + 1);
    if (!look_at_puzzle(rest.substr(0, rest.find('\t')), puzzle)) {
      puzzle.name = trimmed(std::string_view(text).substr(0, tab));
      return std::nullopt;
    }
  }
  const auto end = text.find_first_of(",;\t ");
  if (end != std::string::npos && end > 0 && !look_at_puzzle(std::string_view(text).substr(0, end), puzzle)) return std::nullopt;
  return fault;
}

// The names in a field, with ';' between them; empty ones are passed over. The fault of the first that cannot be kept.
std::optional<Error> take_names(const TableHeader& header, const std::vector<std::string>& fields, const std::string& column, std::vector<std::string>& names) {
  for (std::string& name : split(header.field(fields, column), ';')) {
    if (name.empty()) continue;
    if (auto wrong = wrong_word(name)) {
      wrong->message = column + ": " + wrong->message;
      return wrong;
    }
    names.push_back(std::move(name));
  }
  return std::nullopt;
}

// Only notes keep their line ends.
std::string in_one_line(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

std::optional<Error> look_at_record(const std::string& text, const TableHeader& header, NewPuzzle& puzzle) {
  const auto fields = table_fields(text, header.separator);
  if (!fields) return fields.error();
  puzzle.name = in_one_line(header.field(*fields, "name"));
  puzzle.note = header.field(*fields, "note");
  if (const std::string source = in_one_line(header.field(*fields, "source")); !source.empty()) puzzle.source = source;
  if (const std::string licence = in_one_line(header.field(*fields, "licence")); !licence.empty()) puzzle.licence = licence;
  if (auto wrong = take_names(header, *fields, "tags", puzzle.tags)) return wrong;
  if (auto wrong = take_names(header, *fields, "lessons", puzzle.lessons)) return wrong;
  auto fault = look_at_puzzle(header.field(*fields, "puzzle"), puzzle);
  if (fault) fault->where = {};  // it counts in the field, not in the line
  return fault;
}

class Intake {
 public:
  Intake(Shelf& shelf, const IntakeWish& wish, const IntakeNews& news, IntakeSource source) : shelf_(shelf), wish_(wish), news_(news), source_(std::move(source)) {}

  Result<IntakeReport> run() {
    if (auto trouble = begin()) return std::move(*trouble);
    Block block = read();
    auto looked = std::async(std::launch::async, [this, &block] { return look_at(block); });
    for (;;) {
      const std::vector<NewLine> lines = looked.get();
      const Place after = block.after;
      const bool is_last = block.is_last;
      if (!is_last) {  // the next block is looked at while this one is shelved
        block = read();
        looked = std::async(std::launch::async, [this, &block] { return look_at(block); });
      }
      const bool is_done = is_last && !source_.trouble();
      if (auto trouble = shelve(lines, after, is_done)) return std::move(*trouble);
      report_.was_stopped = news_.progress && !news_.progress(report_.state);
      if (is_last || report_.was_stopped) break;
    }
    if (source_.trouble() && !report_.was_stopped) return *source_.trouble();
    return report_;
  }

 private:
  // The name of the import. Read with other columns it is another import: it does not go on with the first.
  [[nodiscard]] std::string label() const {
    if (wish_.label.empty() || wish_.columns.empty()) return wish_.label;
    return wish_.label + " (" + column_names_text(wish_.columns) + ")";
  }

  std::optional<Error> begin() {
    if (!wish_.label.empty() && !wish_.again) {
      const auto earlier = shelf_.find_import(label());
      if (!earlier) return earlier.error();
      if (*earlier) {
        report_.state = **earlier;
        report_.was_resumed = report_.state.place.offset > 0;
        return report_.was_resumed ? source_.skip_to(report_.state.place) : std::nullopt;
      }
    }
    auto begun = shelf_.begin_import(label());
    if (!begun) return begun.error();
    report_.state = std::move(begun).value();
    return std::nullopt;
  }

  Block read() {
    Block block;
    while (block.lines.size() < static_cast<std::size_t>(wish_.block)) {
      RawLine line;
      if (!source_.next(line)) {
        block.is_last = true;
        break;
      }
      block.lines.push_back(std::move(line));
    }
    block.after = source_.place();
    return block;
  }

  std::vector<NewLine> look_at(const Block& block) const {
    std::vector<std::optional<NewLine>> looked(block.lines.size());
    in_parallel(looked.size(), wish_.threads, kPieceOfWork, [&](std::size_t at) { looked[at] = look_at_raw(block.lines[at]); });
    std::vector<NewLine> lines;
    for (auto& line : looked) {
      if (line) lines.push_back(std::move(*line));
    }
    return lines;
  }

  [[nodiscard]] std::optional<NewLine> look_at_raw(const RawLine& line) const {
    if (line.was_cut) return NewLine{line.number, std::nullopt, "the line is too long for a puzzle", 0};
    return look_at_line(line.text, line.number, source_.header(), wish_);
  }

  std::optional<Error> shelve(const std::vector<NewLine>& lines, const Place& after, bool is_done) {
    const auto shelved = shelf_.add(report_.state, lines, after, is_done);
    if (!shelved) return shelved.error();
    for (std::size_t at = 0; at < lines.size(); ++at) {
      const Shelved& each = (*shelved)[at];
      if (each.as == Shelved::As::kFault && news_.fault) news_.fault(lines[at]);
      if ((each.as == Shelved::As::kRepeat || each.as == Shelved::As::kSame) && news_.repeat) news_.repeat(each);
    }
    return std::nullopt;
  }

  Shelf& shelf_;
  const IntakeWish& wish_;
  const IntakeNews& news_;
  IntakeSource source_;
  IntakeReport report_;
};

}  // namespace

std::optional<NewLine> look_at_line(const std::string& text, std::uint64_t number, const TableHeader* header, const IntakeWish& wish) {
  if (holds_nothing(text)) return std::nullopt;
  NewLine line{number};
  NewPuzzle puzzle;
  puzzle.source = wish.source;
  puzzle.licence = wish.licence;
  puzzle.tags = wish.tags;
  auto fault = header == nullptr ? look_at_plain(text, puzzle) : look_at_record(text, *header, puzzle);
  if (fault) {
    line.fault = std::move(fault->message);
    line.column = fault->where.column;
  } else {
    line.puzzle = std::move(puzzle);
  }
  return line;
}

Result<IntakeReport> take_in(Shelf& shelf, const IntakeWish& wish, const IntakeNews& news) {
  auto source = IntakeSource::open(wish);
  if (!source) return source.error();
  return take_in(shelf, wish, news, std::move(source).value());
}

Result<IntakeReport> take_in(Shelf& shelf, const IntakeWish& wish, const IntakeNews& news, IntakeSource source) { return Intake(shelf, wish, news, std::move(source)).run(); }

}  // namespace cp
