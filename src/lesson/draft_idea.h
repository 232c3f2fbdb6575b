// SPDX-License-Identifier: Apache-2.0
// The scenes of a draft that are about its idea: the balance or the pattern told step by step, and the exercises.
#pragma once

#include <string>
#include <vector>

#include "lesson/directive.h"
#include "path/path.h"
#include "speak/scales.h"
#include "speak/speaker.h"

namespace cp {

// What the balance of a draft is called in its text.
inline constexpr std::string_view kKeyName = "key";

// The way from the puzzle to the idea, for exercises that repeat it on another grid.
struct Prefix {
  bool is_short = false;  // one directive does it (or nothing has to be done)
  std::string name;       // of the directive
  std::string text;
  Position puzzle = Position(standard_shape());
  Position end = Position(standard_shape());
};

struct IdeaInput {
  const Speaker& speaker;
  std::uint64_t seed = 0;
  const PathStep& key;
  Prefix prefix;
};

std::vector<WrittenScene> idea_scenes(const IdeaInput& input);
// Two, or fewer when the step cannot be found again on a similar grid.
std::vector<WrittenScene> exercise_scenes(const IdeaInput& input);

// "left c1,c2 right r3,r7 name key".
std::string balance_line(const Shape& shape, const std::vector<Weight>& weights, const std::string& name);
// "an X-wing", "pointing", "the law of leftovers": the technique of a step inside a sentence.
std::string name_in_sentence(const Speaker& speaker, const Step& step);
// Sentences in paragraphs of a breath or two.
std::vector<std::string> in_breaths(const std::string& text);

}  // namespace cp
