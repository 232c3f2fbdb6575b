// SPDX-License-Identifier: Apache-2.0
// A short lesson about a sample balance, for tests of documents and pages.
#pragma once

#include "lesson/draft.h"
#include "support/data_rows.h"
#include "support/sample_balances.h"

namespace cp::support {

inline PublishedPuzzle published(std::string_view name) {
  for (const PublishedPuzzle& row : published_puzzles()) {
    if (row.name == name) return row;
  }
  return {};
}

// One balance in the middle: before it a single, after it nothing. Title as given.
inline DraftInput sample_input(std::string title = {}) {
  const PublishedPuzzle row = published("gecode14");
  const SampleBalance sample = exact_sample();
  DraftInput input(read(row.puzzle));
  input.title = std::move(title);
  input.solution = row.solution;
  const Cell cell = standard_shape().parse_cell("r3c1").value();
  const House house = standard_shape().parse_house("r3").value();
  Step single{"hidden-single", {{cell, Digit(1)}}, {}, LoneReason{Constraint::of(house, Digit(1))}};
  input.path.push_back({input.puzzle, std::move(single), 10, {}});
  input.path.push_back({sample.before, sample.step, 150, {}});
  input.key = 1;
  return input;
}

inline Document sample_lesson(std::string title = {}) { return draft_lesson(sample_input(std::move(title))).value(); }

}  // namespace cp::support
