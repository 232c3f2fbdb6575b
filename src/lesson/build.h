// SPDX-License-Identifier: Apache-2.0
// From the written lesson to the one that is shown: every step and every claim is asked again, figures are made from the
// position as it then stands. What cannot be proved stops the build.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "lesson/document.h"
#include "lesson/written_lesson.h"

namespace cp {

// Why the build stopped, with the line of the lesson.
struct BuildStop {
  enum class Kind {
    kUnfit,    // the lesson contradicts itself: a cell that is placed already, a grid that does not belong to the puzzle
    kRefuted,  // a claim or step is false
    kOpen,     // a claim does not follow from its footing, or a step by the technique it names
    kBug,      // a proof that does not replay: a fault of the program
  };
  Kind kind = Kind::kUnfit;
  Error error;
  std::string scene;  // its heading
};

using BuildResult = std::variant<Document, BuildStop>;

BuildResult build_lesson(const Lesson& lesson);

// A lesson that is still being written, as far as it can be built. Claims that do not hold are in the scenes with their
// verdicts and do not stop the others; anything else that is wrong does.
struct LessonReview {
  Document document;              // the scene that stops is its last one, up to the line that stops it
  std::optional<BuildStop> stop;  // what kept the rest from being built
};

// `only`: the number of the one claim to be asked, 0 for no claim; without it all are. Everything else takes milliseconds, a claim may take
// seconds. A claim that is not asked is taken for granted by those that rest on it.
LessonReview review_lesson(const Lesson& lesson, std::optional<int> only = std::nullopt);

}  // namespace cp
