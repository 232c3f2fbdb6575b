// SPDX-License-Identifier: Apache-2.0
#include "cli/puzzle_input.h"

#include <algorithm>
#include <vector>

#include "api/reading.h"
#include "base/text.h"
#include "cli/puzzle_file.h"
#include "cli/report.h"

namespace cp::cli {

namespace {

using api::Answer;
using api::Outcome;

// Bad input before open before refuted before done; a bug before all of them.
int worse(int a, int b) {
  static constexpr int kOrder[] = {0, 1, 2, 64, 70};
  const auto rank = [](int code) { return std::find(std::begin(kOrder), std::end(kOrder), code) - std::begin(kOrder); };
  return rank(a) >= rank(b) ? a : b;
}

// What a message about a field is about.
Source source_of(const Answer& answer, const std::string& puzzle, const std::string& puzzle_name, const PuzzleTask& task, std::string& keep) {
  if (answer.field.empty()) return {};
  if (answer.field == "puzzle") return {puzzle, puzzle_name, !puzzle_name.empty(), 0};
  keep = task.field_text(answer.field);
  return {keep, option_of(answer.field), false, 0};
}

// A puzzle that stands alone.
int answer_one(const std::string& puzzle, const std::string& name, bool as_json, const PuzzleTask& task) {
  const Answer answer = task.ask(puzzle);
  if (!answer.is_ok()) {
    std::string keep;
    return fail(*answer.error, as_json, source_of(answer, puzzle, name, task, keep), answer.field);
  }
  if (!say(as_json ? api::to_line(answer.json) + "\n" : task.show(answer.json))) return cannot_say();
  return static_cast<int>(answer.outcome);
}

// One puzzle a line. `origin` is the name of the file, or "standard input".
class Stream {
 public:
  Stream(std::string origin, bool as_json, const PuzzleTask& task) : origin_(std::move(origin)), as_json_(as_json), task_(task) {}

  // False when nothing more can be said.
  bool take(const Line& line) {
    ++number_;
    if (!line.is_too_long && holds_nothing(line.text)) return true;
    ++puzzles_;
    if (line.is_too_long) {
      return refuse(Error{ErrorCode::kBadPuzzle, "the line is too long for a puzzle", "give one puzzle a line", {}}, "");
    }
    const NamedPuzzle named = named_puzzle(line.text);
    Answer answer = task_.ask(named.puzzle);
    if (!answer.is_ok()) {
      if (answer.field == "puzzle" && answer.error->where.is_known()) {
        answer.error->where.line = number_;
        answer.error->where.column += named.column;
        answer.error->where.offset += named.offset;
      }
      return refuse(*answer.error, line.text, answer.field);
    }
    code_ = worse(code_, static_cast<int>(answer.outcome));
    return show(answer, named.name);
  }

  [[nodiscard]] int puzzles() const { return puzzles_; }
  [[nodiscard]] int code() const { return code_; }

 private:
  bool refuse(const Error& error, const std::string& line, const std::string& field = {}) {
    const Answer answer = api::refuse(error, field);
    code_ = worse(code_, static_cast<int>(answer.outcome));
    if (as_json_) {
      Json json = Json::object();
      json["line"] = number_;
      json.update(answer.json);
      if (!say(api::to_line(json) + "\n")) return stop();
    }
    if (field == "puzzle" && error.where.is_known()) {
      Error shown = error;
      shown.where.line = 1;  // the text shown is this one line
      complain(shown, {line, origin_, true, number_ - 1});
      return true;
    }
    const std::string text = task_.field_text(field);
    Source source{text, origin_ + ":" + to_text(number_), false, 0};
    if (!field.empty() && field != "puzzle") source.name += ": " + option_of(field);
    complain(in_options(error, field), source);
    return true;
  }

  bool show(const Answer& answer, const std::string& name) {
    std::string text;
    if (as_json_) {
      Json json = Json::object();
      json["line"] = number_;
      if (!name.empty()) json["name"] = name;
      json.update(answer.json);
      text = api::to_line(json) + "\n";
    } else {
      text = "line " + to_text(number_) + (name.empty() ? "" : " (" + name + ")") + ":\n" + task_.show(answer.json);
    }
    return say(text) || stop();
  }

  bool stop() {
    code_ = cannot_say();
    return false;
  }

  std::string origin_;
  bool as_json_;
  const PuzzleTask& task_;
  int number_ = 0;
  int puzzles_ = 0;
  int code_ = 0;
};

Error no_puzzle(const std::string& origin) {
  return Error{ErrorCode::kBadPuzzle, origin + " holds no puzzle", "give one puzzle a line; blank lines and lines that start with # are passed over", {}};
}

// What a file holds, by its content.
struct Content {
  bool is_list = false;          // one puzzle a line
  std::string whole;             // the one puzzle otherwise; passed-over lines are blank in it
  std::string name;
};

Content content_of(const std::vector<Line>& lines) {
  std::size_t filled = 0;
  std::size_t puzzles = 0;
  Content content;
  const Line* last = nullptr;
  for (const Line& line : lines) {
    const bool is_filled = !holds_nothing(line.text);
    content.whole += (is_filled ? line.text : "") + "\n";
    if (!is_filled) continue;
    last = &line;
    ++filled;
    if (is_puzzle(named_puzzle(line.text).puzzle)) ++puzzles;
  }
  if (filled == 1) {
    const NamedPuzzle named = named_puzzle(last->text);
    content.name = named.name;
    if (!named.name.empty()) content.whole = named.puzzle;
    return content;
  }
  if (puzzles == filled) content.is_list = true;
  else content.is_list = puzzles > 0 && !is_puzzle(content.whole);
  return content;
}

int answer_stream(std::FILE* file, bool as_json, const PuzzleTask& task) {
  Stream stream("standard input", as_json, task);
  for (int number = 1;; ++number) {
    const auto line = read_line(file, number);
    if (!line) break;
    if (!stream.take(*line)) return stream.code();
    if (line->is_too_long && !skip_line(file)) return stream.code();
  }
  if (stream.puzzles() == 0) return fail(no_puzzle("standard input"), as_json);
  return stream.code();
}

int answer_file(const std::string& name, bool as_json, const PuzzleTask& task) {
  const auto lines = read_lines(name);
  if (!lines) return fail(lines.error(), as_json);
  const Content content = content_of(*lines);
  if (trimmed(content.whole).empty()) return fail(no_puzzle("the file '" + name + "'"), as_json);
  if (!content.is_list) return answer_one(content.whole, name, as_json, task);
  Stream stream(name, as_json, task);
  for (const Line& line : *lines) {
    if (!stream.take(line)) break;
  }
  return stream.code();
}

// A text that is neither a puzzle nor a file: which was it meant to be?
bool looks_like_file(const std::string& text) {
  if (text.find_first_of(" \n\t|") != std::string::npos) return false;
  const bool has_other_letters = text.find_first_not_of("0123456789._-+ABCDEFGabcdefg") != std::string::npos;
  return has_other_letters && (text.find('/') != std::string::npos || text.size() < 16 || text.rfind('.') + 5 >= text.size());
}

Error no_such_file(const std::string& argument, const Error& as_puzzle) {
  return Error{ErrorCode::kNotFound, "there is no file '" + argument + "', and it is no puzzle either: " + as_puzzle.message,
               "name a file that exists, or give the puzzle itself, 81 characters with '.' or 0 for an empty cell", {}};
}

}  // namespace

int answer_puzzles(const std::string& argument, bool as_json, const PuzzleTask& task) {
  if (argument == "-") return answer_stream(stdin, as_json, task);
  const auto puzzle = api::try_puzzle(argument);
  if (!puzzle && exists(argument)) return answer_file(argument, as_json, task);
  if (!puzzle && looks_like_file(argument)) return fail(no_such_file(argument, puzzle.error()), as_json);
  return answer_one(argument, "", as_json, task);
}

Result<std::string> single_puzzle(const std::string& argument) {
  std::vector<Line> lines;
  if (argument == "-") {
    while (auto line = read_line(stdin, static_cast<int>(lines.size()) + 1)) {
      if (lines.size() > 1000 || line->is_too_long) return no_puzzle("standard input");
      lines.push_back(std::move(*line));
    }
  } else {
    const auto puzzle = api::try_puzzle(argument);
    if (puzzle) return argument;
    if (!exists(argument)) return looks_like_file(argument) ? no_such_file(argument, puzzle.error()) : puzzle.error();
    auto read = read_lines(argument);
    if (!read) return read.error();
    lines = std::move(*read);
  }
  const std::string origin = argument == "-" ? "standard input" : "the file '" + argument + "'";
  const Content content = content_of(lines);
  if (trimmed(content.whole).empty()) return no_puzzle(origin);
  if (content.is_list) {
    return Error{ErrorCode::kBadArgument, origin + " holds several puzzles", "this command takes one puzzle", {}};
  }
  return content.whole;
}

}  // namespace cp::cli
