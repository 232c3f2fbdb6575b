// SPDX-License-Identifier: Apache-2.0
// From the written lesson to the one that is shown: every step and every claim is asked again, figures are made from the
// position as it then stands. What cannot be proved stops the build.
#pragma once

#include <variant>

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

}  // namespace cp
