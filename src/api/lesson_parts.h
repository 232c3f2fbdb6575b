// SPDX-License-Identifier: Apache-2.0
// A lesson as a value, for shells in the same program that turn it into more than text.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "api/commands.h"
#include "lesson/document.h"

namespace cp::api {

struct LessonParts {
  Answer answer;                     // as lesson() gives it, without `files`
  std::optional<Document> document;  // set when the answer is no error
};

LessonParts lesson_parts(const LessonRequest& request);

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

// Page, figures, captions, chapters, script and description of a lesson; docs/formats/lesson_files.md.
std::vector<TextFile> text_files(const Document& document, bool with_notes);

}  // namespace cp::api
