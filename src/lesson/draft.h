// SPDX-License-Identifier: Apache-2.0
// The first draft of a lesson, made from a solved path. The teacher then edits words, not diagrams.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/result.h"
#include "lesson/written_lesson.h"
#include "path/path.h"

namespace cp {

struct DraftInput {
  explicit DraftInput(Position givens) : puzzle(std::move(givens)) {}

  Position puzzle;                      // a proper one
  std::string title;                    // "" gives "Weigh ... against ..."
  std::string language = "en";
  std::string source;                   // of the puzzle; "": not known
  std::vector<std::string> known;       // in a course: techniques, families and groups taught before; empty: it stands alone
  std::vector<std::string> teaches;     // in a course: what the lesson teaches besides the technique of its key
  std::vector<PathStep> path;           // in order, from the puzzle on; need not reach the end
  std::size_t key = 0;                  // index in path of the step that the lesson is about
  bool is_needed = true;                // plainer steps had come to an end there
  bool is_minimal = false;
  int basics_open = 0;                  // cells that singles, locked candidates, subsets and basic fish leave open
  std::vector<PathStep> alternatives;   // other steps that give the first conclusion of the key; easiest first
  std::size_t alternatives_found = 0;   // of them all
  bool asked_alternatives = false;      // were they looked for?
};

// Error kBadArgument when there is no step `key`.
Result<Lesson> draft_lesson(const DraftInput& input);

}  // namespace cp
