// SPDX-License-Identifier: Apache-2.0
// The first draft of a lesson, made from a solved path. The teacher then edits words, not diagrams.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/result.h"
#include "lesson/document.h"
#include "step/step.h"

namespace cp {

// One step of a path, with the position it was found in.
struct PathScene {
  Position before;
  Step step;
  int cost = 0;
  std::string text;  // the step in words; made from the reason when empty
};

struct DraftInput {
  explicit DraftInput(Position givens) : puzzle(std::move(givens)) {}

  Position puzzle;
  std::string title;                  // "" gives "Weigh ... against ..."
  std::string solution;               // one character a cell
  bool is_proved_unique = true;       // has exactly one solution been proved (not merely found)?
  std::vector<PathScene> path;        // in order, from the puzzle on; need not reach the end
  std::size_t key = 0;                // index in path of the balance that the lesson is about
  std::vector<std::string> facts;     // further facts about the puzzle, each a sentence
};

// Errors: kBadArgument when `key` is no balance step or the solution does not fit the puzzle.
Result<Document> draft_lesson(const DraftInput& input);

}  // namespace cp
