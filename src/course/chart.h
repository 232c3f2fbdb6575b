// SPDX-License-Identifier: Apache-2.0
// Pictures of numbers: bars with their counts, and the map of a course. SVG as the boards have it: for pages and as files.
#pragma once

#include <string>
#include <vector>

#include "export/board_svg.h"

namespace cp {

struct Bar {
  std::string label;
  int count = 0;
};

struct Chart {
  std::string title;
  std::string words;  // what is counted
  std::vector<Bar> bars;
};

// Bars from left to right, one below the other; the longest fills the width. `id` is unique in a page.
std::string chart_svg(const Chart& chart, SvgUse use, std::string_view id);

// The lessons of a course from left to right: above the effort as bars, below a row for each idea: where it is new, where it
// is used again.
struct CourseMap {
  enum class Mark { kNone, kNew, kAgain };
  struct Row {
    std::string name;
    std::vector<Mark> marks;  // one a lesson
  };
  std::string title;
  std::vector<int> efforts;
  std::vector<Row> rows;
};
std::string course_map_svg(const CourseMap& map, SvgUse use, std::string_view id);

}  // namespace cp
