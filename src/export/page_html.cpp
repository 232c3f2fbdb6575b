// SPDX-License-Identifier: Apache-2.0
#include "export/page_html.h"

#include <algorithm>

#include "base/sha256.h"
#include "base/text.h"
#include "export/balance_svg.h"
#include "export/board_svg.h"
#include "export/markup.h"
#include "export/page_assets.h"
#include "export/page_head.h"
#include "export/page_trial.h"
#include "grid/shape.h"
#include "speak/words.h"

namespace cp {

namespace {

constexpr std::size_t kManySteps = 12;  // a scene with more steps may run over a page in print

std::string scene_id(std::size_t index) { return "scene-" + to_text(static_cast<int>(index) + 1); }

bool is_letter(char letter) { return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z'); }

// Where the term stands as a whole word; npos when it does not.
std::size_t find_word(const std::string& text, const std::string& word) {
  if (word.empty()) return std::string::npos;
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    const auto end = at + word.size();
    const bool starts = at == 0 || !is_letter(text[at - 1]);
    const bool ends = end == text.size() || !is_letter(text[end]);
    if (starts && ends) return at;
  }
  return std::string::npos;
}

void paragraph(Markup& out, const Paragraph& words) {
  const auto at = find_word(words.text, words.term);
  if (at == std::string::npos) {
    out.element("p", {}, words.text);
    return;
  }
  out.raw("<p>" + escaped(words.text.substr(0, at)) + "<dfn>" + escaped(words.term) + "</dfn>" +
          escaped(words.text.substr(at + words.term.size())) + "</p>\n");
}

// "&#8722;" is the minus sign; a hyphen would be read as a dash.
std::string signed_entry(int number) { return number > 0 ? "+" + to_text(number) : number < 0 ? "&#8722;" + to_text(-number) : "0"; }

void table_row(Markup& out, std::string_view name, const DigitCounts& counts, int sign, int side, bool is_total) {
  out.open("tr");
  out.element("th", {{"scope", "row"}}, name);
  for (int i = 0; i < side; ++i) {
    const int count = sign * counts[static_cast<std::size_t>(i)];
    out.raw("<td>" + (count == 0 && !is_total ? std::string() : signed_entry(count)) + "</td>");
  }
  out.close("tr");
}

void tally(Markup& out, const TallyTable& table) {
  const Words words(table.language);
  out.open("table", {{"class", "tally"}});
  out.element("caption", {}, words.say("tally.caption"));
  out.open("thead");
  out.open("tr");
  out.element("th", {{"scope", "col"}}, words.say("tally.digit"));
  for (int i = 0; i < table.side; ++i) out.element("th", {{"scope", "col"}}, std::string(1, Shape::name_of(Digit(i))));
  out.close("tr");
  out.close("thead");
  out.open("tbody");
  table_row(out, words.say("tally.right.short"), table.known_right, 1, table.side, false);
  table_row(out, words.say("tally.left.short"), table.known_left, -1, table.side, false);
  if (table.surplus != 0) {
    DigitCounts each{};
    for (int i = 0; i < table.side; ++i) each[static_cast<std::size_t>(i)] = table.surplus;
    table_row(out, words.say("tally.surplus"), each, 1, table.side, false);
  }
  table_row(out, words.say("tally.short"), table.tally, 1, table.side, true);
  out.close("tbody");
  out.close("table");
}

void folded(Markup& out, std::string_view style, std::string_view summary) {
  out.open("details", {{"class", std::string(style)}});
  out.element("summary", {}, summary);
}

// Paragraphs are separated by empty lines.
void paragraphs(Markup& out, const std::string& text) {
  std::size_t start = 0;
  while (start < text.size()) {
    const std::size_t end = std::min(text.find("\n\n", start), text.size());
    out.element("p", {}, text.substr(start, end - start));
    start = end + 2;
  }
}

void exercise(Markup& out, const Exercise& asked, const Words& words, const std::string& id) {
  out.open("div", {{"class", "exercise"}});
  out.element("p", {{"class", "question"}}, asked.question);
  if (!asked.answer.empty() || asked.answer_board) {
    folded(out, "reply", words.say("page.answer.show"));
    paragraphs(out, asked.answer);
    if (asked.answer_board) out.raw("<div class=\"board\">" + board_svg(*asked.answer_board, SvgUse::kInline, id + "-board") + "</div>\n");
    if (asked.answer_pans) out.raw("<div class=\"pans\">" + pans_svg(*asked.answer_pans, SvgUse::kInline, id + "-pans") + "</div>\n");
    out.close("details");
  }
  out.close("div");
}

void claims(Markup& out, const Scene& scene, const Words& words) {
  if (scene.claims.empty()) return;
  folded(out, "steps", words.say("page.claims"));
  out.open("ul");
  for (const AskedClaim& claim : scene.claims) {
    out.raw("<li><code>" + escaped(claim.text) + "</code> " + escaped(claim.reason) + "</li>\n");
  }
  out.close("ul");
  out.close("details");
}

void scene_words(Markup& out, const Scene& scene, const Words& words, const std::string& id, const PageOptions& options) {
  for (const Paragraph& each : scene.paragraphs) paragraph(out, each);
  if (scene.pans) out.raw("<div class=\"pans\">" + pans_svg(*scene.pans, SvgUse::kInline, id + "-pans") + "</div>\n");
  if (scene.table) tally(out, *scene.table);
  for (std::size_t i = 0; i < scene.exercises.size(); ++i) exercise(out, scene.exercises[i], words, id + "-q" + to_text(static_cast<int>(i) + 1));
  if (!scene.steps.empty()) {
    folded(out, "steps", words.say("page.steps", {{"n", static_cast<int>(scene.steps.size())}}));
    out.open("ol");
    for (const std::string& step : scene.steps) out.element("li", {}, step);
    out.close("ol");
    out.close("details");
  }
  claims(out, scene, words);
  if (options.with_notes && !scene.note.empty()) {
    folded(out, "aside", words.say("page.note"));
    out.element("p", {}, scene.note);
    out.close("details");
  }
  if (scene.answer) {
    folded(out, "answer", words.say("page.solution.show"));
    out.raw("<div class=\"board\" data-title=\"" + escaped(words.say("page.solution")) + "\">" + board_svg(*scene.answer, SvgUse::kInline, id + "-answer") + "</div>\n");
    out.close("details");
  }
}

void section(Markup& out, const Document& document, const Words& words, std::size_t index, const PageOptions& options) {
  const Scene& scene = document.scenes[index];
  const std::string id = scene_id(index);
  out.open("section", {{"class", scene.steps.size() > kManySteps ? "scene long" : "scene"}, {"id", id}, {"aria-labelledby", id + "-h"}});
  out.open("div", {{"class", "spread"}});
  out.open("div", {{"class", "heading"}});
  out.element("p", {{"class", "number"}}, words.say("page.scene", {{"n", static_cast<int>(index) + 1}, {"count", static_cast<int>(document.scenes.size())}}));
  out.element("h2", {{"id", id + "-h"}, {"tabindex", "-1"}}, scene.heading);
  out.close("div");
  if (scene.board) out.raw("<div class=\"board\">" + board_svg(*scene.board, SvgUse::kInline, id + "-board") + "</div>\n");
  out.open("div", {{"class", "words"}});
  scene_words(out, scene, words, id, options);
  out.close("div");
  out.close("div");
  out.close("section");
}

// The engine is a module that the page compiles, and runs in workers made from its own script.
std::string script_policy(std::string_view engine) {
  const std::string more = engine.empty() ? "" : " 'sha256-" + sha256_base64(engine) + "' 'wasm-unsafe-eval'; worker-src blob:";
  return "; script-src 'sha256-" + page_script_hash() + "'" + more;
}

// The way to the other lessons of a series.
void course(Markup& out, const Words& words, const PageOptions& options) {
  if (options.series.address.empty()) return;
  out.raw("<nav class=\"course\" aria-label=\"" + escaped(words.say("page.course")) + "\">\n");
  out.element("a", {{"href", options.series.address}}, options.series.title);
  if (!options.previous.address.empty()) out.element("a", {{"href", options.previous.address}, {"rel", "prev"}}, words.say("page.lesson.previous", {{"title", options.previous.title}}));
  if (!options.next.address.empty()) out.element("a", {{"href", options.next.address}, {"rel", "next"}}, words.say("page.lesson.next", {{"title", options.next.title}}));
  out.raw("</nav>\n");
}

}  // namespace

std::string page_html(const Document& document, const PageOptions& options) {
  Markup out;
  page_head(out, {.title = document.title, .language = document.language, .is_right_to_left = document.is_right_to_left, .policy = script_policy(options.engine)});
  const Words words(document.language);
  out.raw("<body>\n<a class=\"skip\" href=\"#scenes\">" + escaped(words.say("page.skip")) + "</a>\n<header>\n");
  out.element("h1", {}, document.title);
  out.raw("<details class=\"contents\"><summary>" + escaped(words.say("page.all")) + "</summary>\n<nav aria-label=\"" + escaped(words.say("page.scenes")) + "\"><ol>\n");
  for (std::size_t i = 0; i < document.scenes.size(); ++i) {
    out.raw("<li>");
    out.element("a", {{"href", "#" + scene_id(i)}}, document.scenes[i].heading);
    out.raw("</li>\n");
  }
  out.raw("</ol></nav>\n</details>\n");
  course(out, words, options);
  out.raw("</header>\n<main id=\"scenes\" tabindex=\"-1\">\n");
  for (std::size_t i = 0; i < document.scenes.size(); ++i) section(out, document, words, i, options);
  if (options.engine.empty()) out.element("p", {{"class", "number without"}}, words.say("page.without.engine"));
  // The script puts numbers in the place of %n and %m.
  const std::string place = words.say("page.scene", {{"n", std::string("%n")}, {"count", std::string("%m")}});
  out.raw("</main>\n<footer class=\"bar\" hidden>\n<button type=\"button\">" + escaped(words.say("page.back")) + "</button>\n<output aria-live=\"polite\" data-words=\"" +
          escaped(place) + "\"></output>\n<button type=\"button\">" + escaped(words.say("page.next")) + "</button>\n</footer>\n<script>");
  out.raw(page_script());
  if (!options.engine.empty()) {
    out.raw("</script>\n<script type=\"application/json\" id=\"trial\">" + page_trial_json(document) + "</script>\n<script>");
    out.raw(options.engine);
  }
  out.raw("</script>\n</body>\n</html>\n");
  return out.text();
}

std::vector<ExportFile> figure_files(const Document& document) {
  std::vector<ExportFile> files;
  for (std::size_t i = 0; i < document.scenes.size(); ++i) {
    const Scene& scene = document.scenes[i];
    const std::string number = to_text(static_cast<int>(i) + 1);
    const std::string stem = "scene-" + (number.size() < 2 ? "0" + number : number) + "-";
    const auto add = [&files, &stem](const std::string& what, std::string text) { files.push_back({stem + what + ".svg", std::move(text)}); };
    if (scene.board) add("board", board_svg(*scene.board, SvgUse::kFile, "board"));
    if (scene.pans) add("pans", pans_svg(*scene.pans, SvgUse::kFile, "pans"));
    if (scene.table) add("tally", tally_svg(*scene.table, SvgUse::kFile, "tally"));
    if (scene.board && scene.pans && scene.table) add("balance", balance_svg(*scene.board, *scene.pans, *scene.table, "balance"));
    if (scene.answer) add("solution", board_svg(*scene.answer, SvgUse::kFile, "solution"));
  }
  return files;
}

}  // namespace cp
