// SPDX-License-Identifier: Apache-2.0
// A lesson: scenes in order, each with words and pictures. A plain value; exporters turn it into pages and files.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "lesson/figure.h"
#include "speak/paragraph.h"

namespace cp {

struct Scene {
  std::string heading;
  std::vector<Paragraph> paragraphs;
  std::optional<Figure> board;
  std::optional<PanPicture> pans;
  std::optional<TallyTable> table;
  std::vector<std::string> steps;  // single steps in order, for readers who want them all; may be empty
  std::optional<Figure> answer;    // the solution: must stay hidden until it is asked for
  std::string note;                // for the teacher alone: likely slips, what to wait for; may be empty
};

struct Document {
  std::string title;
  std::string puzzle;              // givens, one character a cell
  std::vector<std::string> facts;  // short statements about the puzzle, each a sentence
  std::vector<Scene> scenes;
};

}  // namespace cp
