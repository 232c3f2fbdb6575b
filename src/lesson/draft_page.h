// SPDX-License-Identifier: Apache-2.0
// Builds up the scenes of a draft: lines of words are wrapped, notes and directives put in their places.
#pragma once

#include <string>

#include "lesson/written_lesson.h"
#include "speak/paragraph.h"

namespace cp {

class DraftScene {
 public:
  explicit DraftScene(std::string heading) { scene_.heading = std::move(heading); }

  // A paragraph for the audience; *term* in the text marks a term.
  void say(const std::string& text);
  void say(const Paragraph& paragraph);
  void ask(const std::string& question) { add(WrittenLine::Kind::kQuestion, question); }
  void answer(const std::string& text) { add(WrittenLine::Kind::kAnswer, text); }
  void note(const std::string& text) { add(WrittenLine::Kind::kNote, text); }
  void direct(std::string name, std::string text = {});

  [[nodiscard]] WrittenScene finish();

 private:
  void add(WrittenLine::Kind kind, const std::string& text);

  WrittenScene scene_;
};

}  // namespace cp
