// SPDX-License-Identifier: Apache-2.0
// A short lesson about a sample balance, for tests of documents and pages.
#pragma once

#include "lesson/build.h"
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

// The basics, then one balance, then nothing. Title as given.
inline DraftInput sample_input(std::string title = {}) {
  const SampleBalance sample = exact_sample();
  DraftInput input(read(published("gecode14").puzzle));
  input.title = std::move(title);
  PathOptions basics;
  basics.only = {"single", "locked", "subset", "fish"};
  const Path path = find_path(input.puzzle, basics).value();
  input.path = path.steps;
  input.key = input.path.size();
  PathStep key{path.end_position, sample.step, {}, 0, {}};
  key.measure = measure(key.step, key.before, nullptr);
  input.path.push_back(std::move(key));
  input.basics_open = path.end_position.open().size();
  return input;
}

inline Lesson sample_written(std::string title = {}) { return draft_lesson(sample_input(std::move(title))).value(); }

inline Document sample_lesson(std::string title = {}) {
  BuildResult built = build_lesson(sample_written(std::move(title)));
  if (auto* stop = std::get_if<BuildStop>(&built)) {
    Document none;
    none.title = stop->error.message;
    return none;
  }
  return std::get<Document>(std::move(built));
}

}  // namespace cp::support
