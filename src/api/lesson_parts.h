// SPDX-License-Identifier: Apache-2.0
// A lesson as a value, for shells in the same program that turn it into more than text.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "api/commands.h"
#include "lesson/build.h"
#include "lesson/document.h"
#include "lesson/written_lesson.h"

namespace cp::api {

struct LessonParts {
  Answer answer;                     // as lesson() gives it, without `files`
  std::optional<Document> document;  // set when the answer is no error
  std::string text = {};             // everything the document was made from: equal texts give equal documents
};

LessonParts lesson_parts(const LessonRequest& request);

// From a written lesson; the answer as lesson_check() gives it.
LessonParts lesson_text_parts(const std::string& text);

// What answers call the reason of a stop: "unfit", "refuted", "open", "bug".
std::string_view name_of(BuildStop::Kind kind);

// A series that was checked. `lessons` are in the order in which they are to be taught.
struct SeriesParts {
  Answer answer;  // as series_check() gives it
  struct Member {
    std::string name;
    Document document;
    std::string text = {};  // the lesson as it was written
  };
  std::vector<Member> lessons;
  std::string index;  // the page that leads to them; empty when the answer is an error
};
// `tell`, if given, hears which lesson is built next and its number from 1.
using TellLesson = std::function<void(const std::string& name, std::size_t number)>;
SeriesParts series_parts(const SeriesRequest& request, const TellLesson& tell = {});

// When each scene begins and how long it lasts, in seconds; one for each, in order.
struct SceneSpan {
  int start = 0;
  int seconds = 0;
};
std::vector<SceneSpan> scene_spans(const Document& document);

// A file that is text. `name` may have one folder in front: "figures/scene-01-board.svg".
struct TextFile {
  std::string name;
  std::string text;
};

// The pages beside the page of a lesson: addresses and titles; an empty address is none.
struct LessonPlace {
  std::string series;
  std::string series_title;
  std::string previous;
  std::string previous_title;
  std::string next;
  std::string next_title;
};

// Page, figures, captions, chapters, script and description of a lesson; docs/formats/lesson_files.md.
// `engine`: the script with the engine that goes into the page; may be empty.
std::vector<TextFile> text_files(const Document& document, bool with_notes, std::string_view engine = {}, const LessonPlace& place = {});

}  // namespace cp::api
