// SPDX-License-Identifier: Apache-2.0
#include "lesson/written_lesson.h"

#include <algorithm>
#include <array>
#include <optional>

#include "base/text.h"
#include "grid/notation.h"
#include "lesson/directive.h"

namespace cp {

namespace {

using Kind = WrittenLine::Kind;

constexpr std::array<std::string_view, 10> kKeys = {"title", "puzzle", "idea", "level", "needs", "teaches", "language", "minutes", "source", "licence"};
constexpr std::size_t kMostScenes = 500;

// A line of the file without its end and without blanks around it.
struct FileLine {
  std::string_view text;
  int number = 0;
  int column = 1;          // of the first character of text
  std::size_t offset = 0;  // of text in the file
};

int characters_in(std::string_view text) {
  int count = 0;
  for (const char c : text) count += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
  return count;
}

std::vector<FileLine> lines_of(std::string_view text) {
  std::vector<FileLine> lines;
  std::size_t start = 0;
  if (text.starts_with("\xEF\xBB\xBF")) start = 3;
  while (start < text.size()) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    const std::string_view whole = text.substr(start, end - start);
    const std::string_view inner = trimmed(whole);
    const std::size_t indent = inner.empty() ? 0 : static_cast<std::size_t>(inner.data() - whole.data());
    lines.push_back({inner, static_cast<int>(lines.size()) + 1, characters_in(whole.substr(0, indent)) + 1, start + indent});
    start = end + 1;
  }
  return lines;
}

// Where the first byte stands that belongs to no UTF-8 character, or a control character; npos if there is none.
std::size_t bad_byte(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto lead = static_cast<unsigned char>(text[at]);
    if (lead < 0x80) {
      if ((lead < 0x20 && lead != '\n' && lead != '\t' && lead != '\r') || lead == 0x7F) return at;
      ++at;
      continue;
    }
    const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || at + length > text.size()) return at;
    for (std::size_t i = 1; i < length; ++i) {
      if ((static_cast<unsigned char>(text[at + i]) & 0xC0U) != 0x80U) return at;
    }
    const auto second = static_cast<unsigned char>(text[at + 1]);
    if ((lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F) || (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second > 0x8F)) return at;
    at += length;
  }
  return std::string_view::npos;
}

class LessonReader {
 public:
  explicit LessonReader(std::string_view text) : text_(text), lines_(lines_of(text)) {}

  Result<Lesson> read() {
    if (text_.size() > kLongestLesson) return Error{ErrorCode::kBadArgument, "the lesson is too long", "a lesson has at most two million characters", {}};
    if (const std::size_t bad = bad_byte(text_); bad != std::string_view::npos) return wrong_byte(bad);
    read_first_line();
    while (!fault_ && at_ < lines_.size() && !lines_[at_].text.starts_with("==")) read_front(lines_[at_++]);
    if (!fault_) check_front();
    while (!fault_ && at_ < lines_.size()) read_scene();
    if (!fault_ && lesson_.scenes.empty()) complain_at_end("the lesson has no scene", "start one with a line such as == The puzzle");
    if (fault_) return std::move(*fault_);
    return std::move(lesson_);
  }

 private:
  Error wrong_byte(std::size_t offset) {
    TextSpan where{offset, 1, 1, 1};
    for (const FileLine& line : lines_) {
      if (line.offset <= offset) where.line = line.number;
    }
    const std::size_t start = text_.rfind('\n', offset == 0 ? 0 : offset - 1);
    where.column = characters_in(text_.substr(start == std::string_view::npos ? 0 : start + 1, offset - (start == std::string_view::npos ? 0 : start + 1))) + 1;
    return Error{ErrorCode::kBadArgument, "a character here is no text", "lessons are plain text in UTF-8; save the file that way", where};
  }

  void complain(const FileLine& line, std::string_view piece, std::string message, std::string hint, ErrorCode code = ErrorCode::kBadArgument) {
    if (fault_) return;
    const std::size_t inside = piece.data() == nullptr ? 0 : static_cast<std::size_t>(piece.data() - line.text.data());
    fault_ = Error{code, std::move(message), std::move(hint), {line.offset + inside, piece.size(), line.number, line.column + characters_in(line.text.substr(0, inside))}};
  }
  void complain_at_end(std::string message, std::string hint) {
    if (fault_) return;
    const int last = lines_.empty() ? 1 : lines_.back().number;
    fault_ = Error{ErrorCode::kBadArgument, std::move(message), std::move(hint), {text_.size(), 0, last, 1}};
  }

  void read_first_line() {
    if (lines_.empty()) return complain_at_end("the lesson is empty", "the first line is: " + std::string(kLessonFirstLine));
    const FileLine& first = lines_[at_++];
    if (first.text == kLessonFirstLine) return;
    const bool is_other = first.text.starts_with("counterpoise lesson ");
    complain(first, first.text, is_other ? "this lesson has a version that is not known here" : "this is no lesson", "the first line is: " + std::string(kLessonFirstLine));
  }

  void read_front(const FileLine& line) {
    if (line.text.empty()) return;
    if (line.text.front() == '%') return lesson_.comments.push_back(comment(line));
    const std::size_t colon = line.text.find(':');
    if (colon == std::string_view::npos) return complain(line, line.text, "a line such as title: The ring is wanted here", "scenes start with == and a heading; words for the audience belong into a scene");
    const std::string_view key = trimmed(line.text.substr(0, colon));
    const std::string_view value = trimmed(line.text.substr(colon + 1));
    if (std::find(kKeys.begin(), kKeys.end(), key) == kKeys.end()) {
      return complain(line, key, "'" + std::string(key) + "' is not known here", "the keys are " + listed(std::vector<std::string>(kKeys.begin(), kKeys.end())), ErrorCode::kBadName);
    }
    if (std::find(seen_.begin(), seen_.end(), key) != seen_.end()) return complain(line, key, "'" + std::string(key) + "' was given before", "say it once");
    seen_.emplace_back(key);
    if (value.empty()) return complain(line, key, "'" + std::string(key) + "' says nothing", "leave the line out, or write a value after the colon");
    take_value(line, key, value);
  }

  void take_value(const FileLine& line, std::string_view key, std::string_view value) {
    if (key == "title") lesson_.title = value;
    else if (key == "idea") lesson_.idea = value;
    else if (key == "source") lesson_.source = value;
    else if (key == "licence") lesson_.licence = value;
    else if (key == "needs") lesson_.needs = names(line, value);
    else if (key == "teaches") lesson_.teaches = names(line, value);
    else if (key == "level") lesson_.level = number(line, value, 1, 5);
    else if (key == "minutes") lesson_.minutes = number(line, value, 1, 600);
    else if (key == "language") take_language(line, value);
    else take_puzzle(line, value);
  }

  void take_language(const FileLine& line, std::string_view value) {
    if (!is_language_tag(value)) return complain(line, value, "'" + std::string(value.substr(0, 40)) + "' is no name of a language", "write a tag such as en, de or pt-BR");
    lesson_.language = value;
  }

  int number(const FileLine& line, std::string_view value, int low, int high) {
    int result = 0;
    for (const char c : value) result = c >= '0' && c <= '9' && result <= high ? result * 10 + (c - '0') : high + 1;
    if (result < low || result > high) complain(line, value, "a number from " + to_text(low) + " to " + to_text(high) + " is wanted here", "leave the line out if you do not know yet");
    return result;
  }

  // Ids: small letters, digits and '-', separated by commas.
  std::vector<std::string> names(const FileLine& line, std::string_view value) {
    std::vector<std::string> list;
    std::size_t from = 0;
    while (from <= value.size()) {
      const std::size_t to = std::min(value.find(',', from), value.size());
      const std::string_view name = trimmed(value.substr(from, to - from));
      if (!is_idea_name(name)) complain(line, name.empty() ? value : name, "'" + std::string(name) + "' cannot be the name of a technique or an idea", "names are small letters, digits and '-', with commas between them");
      if (std::find(list.begin(), list.end(), name) == list.end()) list.emplace_back(name);
      from = to + 1;
    }
    return list;
  }

  void take_puzzle(const FileLine& line, std::string_view value) {
    auto position = parse_position(value);
    if (!position) {
      if (fault_) return;
      Error error = position.error();
      const std::size_t inside = static_cast<std::size_t>(value.data() - line.text.data()) + error.where.offset;
      error.where = {line.offset + inside, error.where.length, line.number, line.column + characters_in(line.text.substr(0, std::min(inside, line.text.size())))};
      fault_ = std::move(error);
      return;
    }
    const std::string givens = givens_line(*position);
    if (to_line(*position) != givens) return complain(line, value, "a lesson starts from the givens alone", "give one character a cell, '.' for an empty one");
    lesson_.puzzle = givens;
    puzzle_ = std::move(position).value();
  }

  void check_front() {
    if (!puzzle_) return complain_before_scenes("the lesson names no puzzle", "write a line such as puzzle: 65..... (81 characters)");
    if (lesson_.title.empty()) complain_before_scenes("the lesson has no title", "write a line such as title: The ring");
  }
  void complain_before_scenes(std::string message, std::string hint) {
    if (at_ < lines_.size()) complain(lines_[at_], lines_[at_].text, std::move(message), std::move(hint));
    else complain_at_end(std::move(message), std::move(hint));
  }

  static WrittenLine comment(const FileLine& line) { return made(Kind::kComment, line, line.text.substr(1)); }

  static WrittenLine made(Kind kind, const FileLine& line, std::string_view text) {
    const std::string_view inner = trimmed(text);
    const std::size_t inside = inner.empty() ? line.text.size() : static_cast<std::size_t>(inner.data() - line.text.data());
    return {kind, {}, std::string(inner), line.number, line.column + characters_in(line.text.substr(0, inside))};
  }

  void read_scene() {
    const FileLine& start = lines_[at_++];
    WrittenScene scene;
    scene.heading = trimmed(start.text.substr(2));
    scene.line = start.number;
    if (scene.heading.empty() || scene.heading.front() == '=') return complain(start, start.text, "the scene has no heading", "write a few words after ==");
    if (lesson_.scenes.size() >= kMostScenes) return complain(start, start.text, "too many scenes", "a lesson has at most 500");
    SceneScope scope(*puzzle_, names_);
    while (!fault_ && at_ < lines_.size() && !lines_[at_].text.starts_with("==")) read_line(lines_[at_++], scene, scope);
    while (!scene.lines.empty() && scene.lines.back().kind == Kind::kBreak) scene.lines.pop_back();
    if (!scope.has_aside()) names_ = scope.names;
    lesson_.scenes.push_back(std::move(scene));
  }

  // What the directives of a scene may refer to. An aside has a board and names of its own.
  struct SceneScope {
    SceneScope(const Position& position, const Vocabulary& known) : board(position), names(known) {}
    Position board;
    Vocabulary names;
    bool is_aside = false;
    [[nodiscard]] bool has_aside() const { return is_aside; }
  };

  void read_line(const FileLine& line, WrittenScene& scene, SceneScope& scope) {
    if (line.text.empty()) {
      if (!scene.lines.empty() && scene.lines.back().kind != Kind::kBreak) scene.lines.push_back({Kind::kBreak, {}, {}, line.number, 1});
      return;
    }
    switch (line.text.front()) {
      case '%': return scene.lines.push_back(comment(line));
      case '|': return scene.lines.push_back(made(Kind::kNote, line, line.text.substr(1)));
      case '?': return scene.lines.push_back(made(Kind::kQuestion, line, line.text.substr(1)));
      case '!': return read_answer(line, scene);
      case '@': return read_directive_line(line, scene, scope);
      case '\\':
        if (!trimmed(line.text.substr(1)).empty()) scene.lines.push_back(made(Kind::kWords, line, line.text.substr(1)));
        return;
      default: return scene.lines.push_back(made(Kind::kWords, line, line.text));
    }
  }

  void read_answer(const FileLine& line, WrittenScene& scene) {
    const bool has_question = std::any_of(scene.lines.begin(), scene.lines.end(), [](const WrittenLine& each) { return each.kind == Kind::kQuestion; });
    if (!has_question) return complain(line, line.text, "an answer without a question", "write the question before it, on a line that starts with ?; a line of words that starts with ! needs a \\ before it");
    scene.lines.push_back(made(Kind::kAnswer, line, line.text.substr(1)));
  }

  void read_directive_line(const FileLine& line, WrittenScene& scene, SceneScope& scope) {
    const std::size_t end = std::min(line.text.find_first_of(" \t"), line.text.size());
    WrittenLine written = made(Kind::kDirective, line, line.text.substr(end));
    written.name = line.text.substr(1, end - 1);
    auto directive = read_directive({scope.board, scope.names, claims_}, written);
    if (!directive) {
      Error error = directive.error();
      const bool is_name = error.code == ErrorCode::kBadName && error.where.length == 0;
      const std::size_t start = is_name ? 0 : std::min(line.text.size(), static_cast<std::size_t>(written.text.empty() ? 0 : line.text.find(written.text, end)) + error.where.offset);
      complain(line, line.text.substr(start, is_name ? end : error.where.length), error.message, error.hint, error.code);
      return;
    }
    take(*directive, line, scene, scope);
    scene.lines.push_back(std::move(written));
  }

  void take(const Directive& directive, const FileLine& line, const WrittenScene& scene, SceneScope& scope) {
    using D = Directive::Kind;
    if (directive.kind == D::kClaim) ++claims_;
    if (directive.kind == D::kAside) {
      const bool is_first = std::none_of(scene.lines.begin(), scene.lines.end(), [](const WrittenLine& each) { return each.kind == Kind::kDirective && each.name != "time"; });
      if (!is_first) return complain(line, line.text, "@aside comes too late", "it is the first directive of its scene: everything else there is about its grid");
      scope.board = *directive.grid;
      scope.names = {};
      scope.is_aside = true;
    }
    if (directive.kind == D::kGrid && &directive.grid->shape() != &puzzle_->shape()) {
      return complain(line, line.text, "the grid has another size than the puzzle", "use @aside for a grid of its own");
    }
    if (directive.kind == D::kGrid) scope.board = *directive.grid;
    if (directive.kind != D::kBalance && directive.kind != D::kLet) return;
    if (auto fault = enter_name(scope.board.shape(), directive, scope.names)) complain(line, line.text, fault->message, fault->hint);
  }

  std::string_view text_;
  std::vector<FileLine> lines_;
  std::size_t at_ = 0;
  Lesson lesson_;
  std::optional<Position> puzzle_;
  std::vector<std::string> seen_;
  Vocabulary names_;
  int claims_ = 0;
  std::optional<Error> fault_;
};

bool needs_escape(std::string_view words) {
  static constexpr std::string_view kMarks = "%|?!@\\";
  return !words.empty() && (kMarks.find(words.front()) != std::string_view::npos || words.starts_with("=="));
}

std::string printed(const WrittenLine& line) {
  const auto marked = [&line](std::string_view mark) { return std::string(mark) + (line.text.empty() ? "" : " " + line.text); };
  switch (line.kind) {
    case Kind::kBreak: return {};
    case Kind::kComment: return marked("%");
    case Kind::kWords: return (needs_escape(line.text) ? "\\" : "") + line.text;
    case Kind::kNote: return marked("|");
    case Kind::kQuestion: return marked("?");
    case Kind::kAnswer: return marked("!");
    case Kind::kDirective: return marked("@" + line.name);
  }
  return {};
}

void print_key(std::string& text, std::string_view key, const std::string& value) {
  if (!value.empty()) text.append(key).append(": ").append(value).append("\n");
}

}  // namespace

bool is_language_tag(std::string_view text) {
  std::size_t part = 0;
  for (const char c : text) {
    if (c == '-') {
      if (part == 0) return false;
      part = 0;
    } else if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')) {
      if (++part > 8) return false;
    } else {
      return false;
    }
  }
  return part > 0 && text.size() <= 35 && text.find_first_of("-") != 0 && text.substr(0, text.find('-')).size() >= 2;
}

bool is_idea_name(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

Result<Lesson> parse_lesson(std::string_view text) { return LessonReader(text).read(); }

std::string print_lesson(const Lesson& lesson) {
  std::string text(kLessonFirstLine);
  text += "\n";
  for (const WrittenLine& line : lesson.comments) text += printed(line) + "\n";
  print_key(text, "title", lesson.title);
  print_key(text, "puzzle", lesson.puzzle);
  print_key(text, "idea", lesson.idea);
  print_key(text, "level", lesson.level == 0 ? "" : to_text(lesson.level));
  print_key(text, "needs", joined(lesson.needs, ", "));
  print_key(text, "teaches", joined(lesson.teaches, ", "));
  print_key(text, "language", lesson.language);
  print_key(text, "minutes", lesson.minutes == 0 ? "" : to_text(lesson.minutes));
  print_key(text, "source", lesson.source);
  print_key(text, "licence", lesson.licence);
  for (const WrittenScene& scene : lesson.scenes) {
    text += "\n== " + scene.heading + "\n";
    for (const WrittenLine& line : scene.lines) text += printed(line) + "\n";
  }
  return text;
}

Position puzzle_of(const Lesson& lesson) { return parse_position(lesson.puzzle).value(); }

}  // namespace cp
