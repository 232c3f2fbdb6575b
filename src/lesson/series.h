// SPDX-License-Identifier: Apache-2.0
// Several lessons as a course: in which order, does each need only what was taught before, and what occurs where?
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "lesson/document.h"

namespace cp {

inline constexpr std::string_view kSeriesFirstLine = "counterpoise series 1";
inline constexpr std::array<std::string_view, 3> kSeriesKeys = {"title", "language", "assumes"};

// What the series says of itself (docs/formats/series.md).
struct SeriesAbout {
  std::string title;
  std::string language = "en";
  std::vector<std::string> assumes;  // techniques, families and ideas that pupils bring along
  std::vector<std::string> words;    // paragraphs for the index page
  std::vector<TextSpan> places = {};  // of the names in `assumes`, when they were read from a text
};
// An empty text is a series that says nothing of itself; blanks alone are a mistake. Errors have line and column; kBadName is an
// unknown key.
Result<SeriesAbout> parse_series(std::string_view text);

struct SeriesMember {
  std::string name;  // of its file, without the ending
  Document document;
};

// Something a lesson leans on that was not taught before it.
struct SeriesGap {
  std::size_t lesson = 0;  // index of the member
  std::string missing;
  bool is_used = false;    // a step uses it; otherwise the lesson names it as needed
  std::string taught_later = {};  // the lesson that teaches it, if there is one
};

struct SeriesPlan {
  std::vector<std::size_t> order;  // members in the order in which they are to be taught
  std::vector<SeriesGap> gaps;     // in that order
  // Which techniques and ideas occur where: a row a name, sorted, with a mark for each member in the order of teaching.
  enum class Mark { kNone, kTaught, kNeeded, kUsed };
  struct Row {
    std::string name;
    std::vector<Mark> marks;
  };
  std::vector<Row> coverage;
};

// Next comes always the gentlest lesson (level, then name) whose needs have been taught. When there is none the gentlest of the
// rest comes, and its gaps are noted.
SeriesPlan plan_series(const SeriesAbout& about, const std::vector<SeriesMember>& members);

}  // namespace cp
