// SPDX-License-Identifier: Apache-2.0
// A lesson as the teacher writes it and keeps it: plain text, line by line (docs/formats/lesson_document.md). Reading it and
// printing it gives the same lesson again; printing makes one canonical text of it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "grid/position.h"

namespace cp {

inline constexpr std::string_view kLessonFirstLine = "counterpoise lesson 1";
inline constexpr std::size_t kLongestLesson = 2'000'000;  // bytes

// One line of a scene, or of the front matter.
struct WrittenLine {
  enum class Kind {
    kBreak,      // empty: the next words start a paragraph
    kComment,    // % ...
    kWords,      // for the audience; *term* marks a term where it is explained
    kNote,       // | ...  for the teacher alone
    kQuestion,   // ? ...
    kAnswer,     // ! ...
    kDirective,  // @name text
  };
  Kind kind = Kind::kWords;
  std::string name;  // of a directive
  std::string text;  // without its mark; white space at the ends is gone
  int line = 0;      // where it stood, from 1; 0: not read from a text
  int column = 0;    // where `text` starts in its line

  friend bool operator==(const WrittenLine& a, const WrittenLine& b) { return a.kind == b.kind && a.name == b.name && a.text == b.text; }
};

struct WrittenScene {
  std::string heading;
  std::vector<WrittenLine> lines;
  int line = 0;

  friend bool operator==(const WrittenScene& a, const WrittenScene& b) { return a.heading == b.heading && a.lines == b.lines; }
};

struct Lesson {
  std::string title;
  std::string puzzle;                 // any form of docs/formats/position.md on one line; canonical: one character a cell
  std::string idea;
  int level = 0;                      // 1 .. 5; 0: not given
  std::vector<std::string> needs;
  std::vector<std::string> teaches;
  std::string language = "en";
  int minutes = 0;                    // 0: not given
  std::string source;
  std::string licence;
  std::vector<WrittenLine> comments;  // of the front matter
  std::vector<WrittenScene> scenes;

  friend bool operator==(const Lesson&, const Lesson&) = default;
};

// Errors have line, column and a hint. Every directive is read, so what is parsed can be built unless a statement in it
// turns out to be false.
Result<Lesson> parse_lesson(std::string_view text);

// The canonical text. parse_lesson(print_lesson(l)) == l for every l that came from parse_lesson or draft_lesson.
std::string print_lesson(const Lesson& lesson);

// Has the text the form of a language tag, such as en, de or pt-BR?
bool is_language_tag(std::string_view text);

// May it be the name of a technique or an idea: small letters, digits and '-'?
bool is_idea_name(std::string_view text);

// The puzzle as a position. Precondition: the lesson was parsed.
Position puzzle_of(const Lesson& lesson);

}  // namespace cp
