// SPDX-License-Identifier: Apache-2.0
// The words that exported files add to the teacher's own, in every language that comes along.
#pragma once

#include <string>
#include <string_view>

namespace cp {

enum class FileWord {
  kScene,         // "Scene"
  kOf,            // between two numbers: "Scene 3 of 10"
  kPage,          // "Page"
  kNotes,         // heading above empty lines: room for the pupil's notes
  kStepsOneByOne,
  kExercise,
  kExercises,
  kAnswer,
  kAnswers,
  kSolution,
  kTeacherNote,
  kChapters,
  kPuzzle,
  kLevel,
  kMinutes,       // after a number
  kTeaches,
  kNeeds,
  kSource,
  kLicence,
  kArgument,      // the part of a handout that explains
  kWorksheet,
  kHandout,
  kTryFirst,      // a line that sends pupils to the end of the handout
  kTallyRowRight, // rows of the tally, set as text
  kTallyRowLeft,
  kSurplus,
  kTally,
};

// In the language of a BCP 47 tag ("de", "de-AT"); English when the language does not come along.
std::string file_word(FileWord word, std::string_view language);

// Does the language come along?
bool has_file_words(std::string_view language);

}  // namespace cp
