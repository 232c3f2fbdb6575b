// SPDX-License-Identifier: Apache-2.0
#include "course/portrait.h"

#include <algorithm>

#include "base/text.h"
#include "course/idea_facts.h"
#include "export/markup.h"
#include "export/page_head.h"

namespace cp {

namespace {

constexpr int kHardestBin = 20;
constexpr int kEffortBins = 16;  // at most so many bars

void count_name(std::vector<std::pair<std::string, int>>& counts, const std::string& name) {
  const auto at = std::find_if(counts.begin(), counts.end(), [&](const auto& one) { return one.first == name; });
  if (at == counts.end()) counts.emplace_back(name, 1);
  else ++at->second;
}

// Bars of equal width from the least value to the greatest, none left out between.
std::vector<Bar> binned(const std::vector<std::pair<int, int>>& counts, int width) {
  std::vector<Bar> bars;
  if (counts.empty()) return bars;
  for (int from = counts.front().first / width * width; from <= counts.back().first; from += width) {
    int total = 0;
    for (const auto& [value, count] : counts) total += value >= from && value < from + width ? count : 0;
    bars.push_back({width == 1 ? to_text(from) : to_text(from) + " to " + to_text(from + width - 1), total});
  }
  return bars;
}

// 10, 20, 50, 100, ... so that there are not too many bars.
int fitting_width(const std::vector<std::pair<int, int>>& counts) {
  const int range = counts.empty() ? 0 : counts.back().first - counts.front().first;
  int width = 10;
  while (range / width >= kEffortBins) {
    const bool is_two = std::to_string(width).front() == '2';
    width = is_two ? width / 2 * 5 : width * 2;
  }
  return width;
}

}  // namespace

void Portrait::count(Counts& counts, int value) {
  const auto at = std::lower_bound(counts.begin(), counts.end(), std::pair{value, 0});
  if (at != counts.end() && at->first == value) ++at->second;
  else counts.insert(at, {value, 1});
}

void Portrait::add(const SurveyRecord& record) {
  ++puzzles_;
  proper_ += record.is_proper() ? 1 : 0;
  count(givens_, record.givens);
  if (!record.path) return;
  count_name(ends_, record.path->end);
  if (!record.balances.empty()) count_name(kinds_, record.balances.front().kind);
  if (!record.is_solved()) return;
  count(hardest_, record.path->hardest);
  count(effort_, record.path->effort);
  for (const TechniqueUse& use : record.path->techniques) count_name(techniques_, use.technique);
}

std::vector<Chart> Portrait::charts() const {
  const auto bars = [](const std::vector<std::pair<std::string, int>>& counts, bool show) {
    std::vector<Bar> made;
    for (const auto& [name, count] : counts) made.push_back({show ? shown(name) : name, count});
    return made;
  };
  auto techniques = techniques_;
  std::sort(techniques.begin(), techniques.end(), [](const auto& a, const auto& b) { return std::pair(cost_of(a.first), a.first) < std::pair(cost_of(b.first), b.first); });
  auto kinds = kinds_;
  std::sort(kinds.begin(), kinds.end(), [](const auto& a, const auto& b) { return std::pair(-a.second, a.first) < std::pair(-b.second, b.first); });
  auto ends = ends_;
  std::sort(ends.begin(), ends.end());
  std::vector<Chart> all{{"Givens", "Puzzles by number of givens", binned(givens_, 1)},
                         {"How the path ends", "Proper puzzles by how the easiest path ends", bars(ends, false)},
                         {"The hardest step", "Solved puzzles by the cost of the hardest step", binned(hardest_, kHardestBin)},
                         {"Effort", "Solved puzzles by the costs of all steps together", binned(effort_, fitting_width(effort_))},
                         {"Techniques", "Solved puzzles whose easiest path uses the technique; the cheapest first", bars(techniques, true)},
                         {"Balances", "Puzzles by the kind of their best balance after the basics", bars(kinds, false)}};
  std::erase_if(all, [](const Chart& chart) { return chart.bars.empty(); });
  return all;
}

std::string Portrait::words() const {
  std::string text = to_text(puzzles_) + (puzzles_ == 1 ? " puzzle, " : " puzzles, ") + to_text(proper_) + " of them proper";
  if (faults_ > 0) text += "; " + to_text(faults_) + (faults_ == 1 ? " line that is none" : " lines that are none");
  return text + ".";
}

std::string portrait_html(const std::string& title, const Portrait& portrait) {
  Markup out;
  page_head(out, {.title = title, .language = "en", .is_right_to_left = false, .policy = ""});
  out.raw("<body class=\"series\">\n<header>\n");
  out.element("h1", {}, title);
  out.raw("</header>\n<main>\n");
  out.element("p", {}, portrait.words());
  int number = 0;
  for (const Chart& chart : portrait.charts()) {
    out.open("section");
    out.element("h2", {}, chart.title);
    out.element("p", {}, chart.words + ".");
    out.raw(chart_svg(chart, SvgUse::kInline, "chart-" + to_text(++number)) + "\n");
    out.close("section");
  }
  out.raw("</main>\n</body>\n</html>\n");
  return out.text();
}

CourseMap map_of(const Course& course, const std::vector<CourseCandidate>& candidates, const std::string& title) {
  CourseMap map;
  map.title = title;
  std::vector<std::string> rows;  // techniques
  for (const CourseLesson& lesson : course.lessons) {
    map.efforts.push_back(candidates[lesson.candidate].record.path->effort);
    for (const std::string& id : lesson.new_techniques) rows.push_back(id);
  }
  for (const std::string& id : rows) {
    CourseMap::Row row{shown(id), {}};
    for (const CourseLesson& lesson : course.lessons) {
      const auto& uses = candidates[lesson.candidate].record.path->techniques;
      const bool is_used = std::any_of(uses.begin(), uses.end(), [&](const TechniqueUse& use) { return use.technique == id; });
      const bool is_new = std::find(lesson.new_techniques.begin(), lesson.new_techniques.end(), id) != lesson.new_techniques.end();
      row.marks.push_back(is_new ? CourseMap::Mark::kNew : is_used ? CourseMap::Mark::kAgain : CourseMap::Mark::kNone);
    }
    map.rows.push_back(std::move(row));
  }
  return map;
}

}  // namespace cp
