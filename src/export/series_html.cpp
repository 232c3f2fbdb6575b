// SPDX-License-Identifier: Apache-2.0
#include "export/series_html.h"

#include <array>

#include "base/text.h"
#include "export/board_svg.h"
#include "export/idea_names.h"
#include "export/markup.h"
#include "export/page_head.h"
#include "grid/notation.h"
#include "speak/speaker.h"

namespace cp {

namespace {
void entry(Markup& out, const Speaker& speaker, std::string_view key, const std::string& value) {
  if (value.empty()) return;
  out.element("dt", {}, speaker.words().say(key));
  out.element("dd", {}, value);
}

void lesson_entry(Markup& out, const Speaker& speaker, const SeriesMember& member, std::size_t place) {
  const Document& lesson = member.document;
  const std::string id = "lesson-" + to_text(static_cast<long long>(place) + 1);
  out.open("li", {{"class", "entry"}});
  if (const auto position = parse_position(lesson.puzzle); position) {
    Figure board(*position);
    board.language = lesson.language;
    board.title = lesson.title;
    describe(board);
    out.raw("<div class=\"board\">" + board_svg(board, SvgUse::kInline, id) + "</div>\n");
  }
  out.open("div");
  out.open("h2");
  out.element("a", {{"href", member.name + "/index.html"}, {"lang", lesson.language}}, lesson.title);
  out.close("h2");
  out.open("dl");
  if (lesson.level > 0) entry(out, speaker, "series.level", speaker.words().say("series.level.of", {{"n", lesson.level}}));
  const int minutes = lesson.minutes > 0 ? lesson.minutes : (total_seconds(lesson) + 59) / 60;
  entry(out, speaker, "page.time", speaker.words().say("page.minutes", {{"n", minutes}}));
  entry(out, speaker, "page.needs", idea_names(speaker, lesson.needs));
  entry(out, speaker, "page.teaches", idea_names(speaker, lesson.teaches));
  out.close("dl");
  out.close("div");
  out.close("li");
}

void coverage(Markup& out, const Speaker& speaker, const SeriesPlan& plan) {
  static constexpr std::array<std::string_view, 4> kMarks = {"", "series.taught", "series.needed", "series.used"};
  out.element("h2", {}, speaker.words().say("series.coverage"));
  out.raw("<section class=\"scroll\" tabindex=\"0\" aria-label=\"" + escaped(speaker.words().say("series.coverage")) + "\">\n<table>\n");
  out.element("caption", {}, speaker.words().say("series.coverage.words"));
  out.open("tr");
  out.element("th", {{"scope", "col"}}, speaker.words().say("series.technique"));
  for (std::size_t i = 0; i < plan.order.size(); ++i) out.element("th", {{"scope", "col"}}, to_text(static_cast<long long>(i) + 1));
  out.close("tr");
  for (const SeriesPlan::Row& row : plan.coverage) {
    out.open("tr");
    out.element("th", {{"scope", "row"}}, idea_name(speaker, row.name));
    for (const SeriesPlan::Mark mark : row.marks) {
      out.element("td", {}, mark == SeriesPlan::Mark::kNone ? std::string() : speaker.words().say(kMarks[static_cast<std::size_t>(mark)]));
    }
    out.close("tr");
  }
  out.raw("</table>\n</section>\n");
}

}  // namespace

std::string series_html(const SeriesAbout& about, const std::vector<SeriesMember>& members, const SeriesPlan& plan) {
  const Speaker speaker(about.language);
  const std::string title = about.title.empty() ? speaker.words().say("series.title") : about.title;
  Markup out;
  page_head(out, {.title = title, .language = about.language, .is_right_to_left = is_right_to_left(about.language), .policy = ""});
  out.raw("<body class=\"series\">\n<header>\n");
  out.element("h1", {}, title);
  out.raw("</header>\n<main>\n");
  for (const std::string& paragraph : about.words) out.element("p", {}, paragraph);
  out.raw("<ol class=\"lessons\">\n");
  for (std::size_t i = 0; i < plan.order.size(); ++i) lesson_entry(out, speaker, members[plan.order[i]], i);
  out.raw("</ol>\n");
  coverage(out, speaker, plan);
  out.raw("</main>\n</body>\n</html>\n");
  return out.text();
}

}  // namespace cp
