// SPDX-License-Identifier: Apache-2.0
#include "course/chart.h"

#include <algorithm>

#include "base/text.h"
#include "export/svg_parts.h"

namespace cp {

namespace {

constexpr int kLetter = 102;  // tenths of a unit that a letter of a label (17 units high) takes in a wide typeface

void text_at(Markup& out, int x, int y, std::string_view anchor, const std::string& text) {
  out.element("text", {{"class", "key"}, {"x", to_text(x)}, {"y", to_text(y)}, {"text-anchor", std::string(anchor)}}, text);
}

void bar_at(Markup& out, int x, int y, int width, int height) {
  out.empty("rect", {{"class", "lt"}, {"x", to_text(x)}, {"y", to_text(y)}, {"width", to_text(width)}, {"height", to_text(height)}});
  out.empty("rect", {{"class", "le"}, {"x", to_text(x)}, {"y", to_text(y)}, {"width", to_text(width)}, {"height", to_text(height)}});
}

int greatest(const std::vector<int>& values) { return values.empty() ? 1 : std::max(1, *std::max_element(values.begin(), values.end())); }

}  // namespace

std::string chart_svg(const Chart& chart, SvgUse use, std::string_view id) {
  constexpr int kLine = 30;
  constexpr int kRoom = 500;        // for the bars
  constexpr int kCounts = 90;       // behind them
  constexpr int kLeastLabels = 270;
  std::vector<int> counts;
  int labels = kLeastLabels;
  std::string told = chart.words + ": ";
  for (const Bar& bar : chart.bars) {
    counts.push_back(bar.count);
    labels = std::max(labels, kLetter * static_cast<int>(bar.label.size()) / 10 + 24);
    told += (counts.size() == 1 ? "" : "; ") + bar.label + " " + to_text(bar.count);
  }
  Markup out;
  svg_begin(out, {labels + kRoom + kCounts, kLine * static_cast<int>(chart.bars.size()) + 16, chart.title, told + "."}, use, id);
  const int most = greatest(counts);
  int y = 8;
  for (const Bar& bar : chart.bars) {
    text_at(out, labels - 12, y + 20, "end", bar.label);
    if (bar.count > 0) bar_at(out, labels, y + 4, std::max(2, static_cast<int>(static_cast<long long>(kRoom) * bar.count / most)), kLine - 10);
    text_at(out, labels + static_cast<int>(static_cast<long long>(kRoom) * bar.count / most) + 12, y + 20, "start", to_text(bar.count));
    y += kLine;
  }
  svg_end(out);
  return out.text();
}

std::string course_map_svg(const CourseMap& map, SvgUse use, std::string_view id) {
  constexpr int kStep = 74;
  constexpr int kLine = 34;
  constexpr int kLabels = 250;
  constexpr int kTop = 190;  // height of the efforts
  const auto lessons = static_cast<int>(map.efforts.size());
  const int most = greatest(map.efforts);
  const int bottom = kTop + 40 + kLine * static_cast<int>(map.rows.size());
  Markup out;
  std::string told = "Effort of the lessons: ";
  for (std::size_t i = 0; i < map.efforts.size(); ++i) told += (i == 0 ? "" : ", ") + to_text(map.efforts[i]);
  svg_begin(out, {kLabels + kStep * lessons + 20, bottom + 44, map.title, told + ". Below, a ring where an idea is new, a dot where it is used again."}, use, id);
  text_at(out, kLabels - 12, kTop, "end", "effort");
  for (int i = 0; i < lessons; ++i) {
    const int height = std::max(2, static_cast<int>(static_cast<long long>(kTop - 40) * map.efforts[static_cast<std::size_t>(i)] / most));
    bar_at(out, kLabels + kStep * i + 14, kTop - height, kStep - 28, height);
    text_at(out, kLabels + kStep * i + kStep / 2, kTop - height - 8, "middle", to_text(map.efforts[static_cast<std::size_t>(i)]));
    text_at(out, kLabels + kStep * i + kStep / 2, kTop + 24, "middle", to_text(i + 1));
  }
  int y = kTop + 40;
  for (const CourseMap::Row& row : map.rows) {
    text_at(out, kLabels - 12, y + 22, "end", row.name);
    out.empty("path", {{"class", "hair"}, {"d", "M" + to_text(kLabels) + " " + to_text(y + kLine) + "h" + to_text(kStep * lessons)}});
    for (std::size_t i = 0; i < row.marks.size(); ++i) {
      const std::string x = to_text(kLabels + kStep * static_cast<int>(i) + kStep / 2);
      const std::string middle = to_text(y + kLine / 2);
      if (row.marks[i] == CourseMap::Mark::kNew) out.empty("circle", {{"class", "ring"}, {"cx", x}, {"cy", middle}, {"r", "10"}});
      if (row.marks[i] == CourseMap::Mark::kAgain) out.empty("circle", {{"class", "post"}, {"cx", x}, {"cy", middle}, {"r", "5"}});
    }
    y += kLine;
  }
  const int key = bottom + 26;
  out.empty("circle", {{"class", "ring"}, {"cx", to_text(kLabels + 10)}, {"cy", to_text(key - 6)}, {"r", "10"}});
  text_at(out, kLabels + 28, key, "start", "new");
  out.empty("circle", {{"class", "post"}, {"cx", to_text(kLabels + 100)}, {"cy", to_text(key - 6)}, {"r", "5"}});
  text_at(out, kLabels + 114, key, "start", "used again");
  svg_end(out);
  return out.text();
}

}  // namespace cp
