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

// Bars of equal width from the least value to the greatest, none left out between.
std::vector<Bar> binned(const std::map<int, int>& counts, int width) {
  std::vector<Bar> bars;
  if (counts.empty()) return bars;
  for (int from = counts.begin()->first / width * width; from <= counts.rbegin()->first; from += width) {
    int total = 0;
    for (const auto& [value, count] : counts) total += value >= from && value < from + width ? count : 0;
    bars.push_back({width == 1 ? to_text(from) : to_text(from) + " to " + to_text(from + width - 1), total});
  }
  return bars;
}

// 10, 20, 50, 100, ... so that there are not too many bars.
int fitting_width(const std::map<int, int>& counts) {
  const int range = counts.empty() ? 0 : counts.rbegin()->first - counts.begin()->first;
  for (int ten = 10;; ten *= 10) {
    for (const int width : {ten, 2 * ten, 5 * ten}) {
      if (range / width < kEffortBins) return width;
    }
  }
}

}  // namespace

void Portrait::add(const SurveyRecord& record) {
  ++puzzles_;
  proper_ += record.is_proper() ? 1 : 0;
  ++givens_[record.givens];
  if (!record.path) return;
  ++ends_[record.path->end];
  if (!record.balances.empty()) ++kinds_[record.balances.front().kind];
  if (!record.is_solved()) return;
  ++hardest_[record.path->hardest];
  ++effort_[record.path->effort];
  for (const TechniqueUse& use : record.path->techniques) ++techniques_[use.technique];
}

std::vector<Chart> Portrait::charts() const {
  const auto bars_of = [](const std::map<std::string, int>& counts) {
    std::vector<Bar> bars;
    for (const auto& [name, count] : counts) bars.push_back({name, count});
    return bars;
  };
  // Equals stay in the order of their names.
  std::vector<Bar> techniques = bars_of(techniques_);
  std::stable_sort(techniques.begin(), techniques.end(), [](const Bar& a, const Bar& b) { return cost_of(a.label) < cost_of(b.label); });
  for (Bar& bar : techniques) bar.label = shown(bar.label);
  std::vector<Bar> kinds = bars_of(kinds_);
  std::stable_sort(kinds.begin(), kinds.end(), [](const Bar& a, const Bar& b) { return a.count > b.count; });
  std::vector<Chart> all{{"Givens", "Puzzles by number of givens", binned(givens_, 1)},
                         {"How the path ends", "Proper puzzles by how the easiest path ends", bars_of(ends_)},
                         {"The hardest step", "Solved puzzles by the cost of the hardest step", binned(hardest_, kHardestBin)},
                         {"Effort", "Solved puzzles by the costs of all steps together", binned(effort_, fitting_width(effort_))},
                         {"Techniques", "Solved puzzles whose easiest path uses the technique; the cheapest first", techniques},
                         {"Balances", "Puzzles by the kind of their best balance after the basics", kinds}};
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
