// SPDX-License-Identifier: Apache-2.0
#include "print/handout_pdf.h"

#include <algorithm>
#include <array>
#include <vector>

#include "base/text.h"
#include "export/balance_svg.h"
#include "export/board_svg.h"
#include "export/idea_names.h"
#include "export/scene_times.h"
#include "print/page_flow.h"
#include "print/picture.h"

namespace cp {

namespace {

constexpr double kGap = 16;
const Lettering kBody{10.5, false, true, false, Align::kStart, 1.28, kInk};
const Lettering kSmall{8.5, false, true, false, Align::kStart, 1.22, kInk};
const Lettering kAside{9, false, false, false, Align::kStart, 1.25, kDim};
const Lettering kStrong{10.5, true, true, false, Align::kStart, 1.28, kInk};
const Lettering kTallyName{7.5, false, false, false, Align::kStart, 1.2, kInk};
const Lettering kTallyEntry{8, false, true, false, Align::kMiddle, 1.2, kInk};
const Lettering kTallyHead{8, true, true, false, Align::kMiddle, 1.2, kInk};
constexpr double kTallyLine = 13;
const Lettering kCode{8.5, false, false, true, Align::kStart, 1.2, kInk};
const Lettering kFixed{8, false, false, true, Align::kMiddle, 1.2, kDim};

// Figures bring the cream paper of the pages; on a sheet the paper is there already.
std::string on_white(std::string svg) {
  const std::string cream = "#fffdf8";
  for (auto at = svg.find(cream); at != std::string::npos; at = svg.find(cream, at)) svg.replace(at, cream.size(), "#ffffff");
  return svg;
}

std::string board_text(const Figure& figure) { return on_white(board_svg(figure, SvgUse::kFile, "board")); }

std::string alternative(const std::string& title, const std::string& description) { return title.empty() ? description : title + ". " + description; }

// A figure ready to be drawn, with the words that stand for it.
struct Drawn {
  std::string svg;
  std::string description;
  double ratio = 0;  // height for a width of 1

  [[nodiscard]] double height(double width) const { return ratio * width; }
};

double height_of(const std::string& svg, double width) {
  const Result<Picture> picture = Picture::from_svg(svg);
  return picture ? picture->height_at(width) : 0;
}

Drawn drawn_from(std::string svg, std::string description) {
  const double ratio = height_of(svg, 1);
  return {std::move(svg), std::move(description), ratio};
}

Drawn drawn_board(const Figure& figure) { return drawn_from(board_text(figure), alternative(figure.title, figure.description)); }
Drawn drawn_pans(const PanPicture& pans) { return drawn_from(on_white(pans_svg(pans, SvgUse::kFile, "pans")), alternative(pans.title, pans.description)); }

// How wide pictures may stand beside their words, as shares of the page: the first that lets a scene share a page with the one before.
constexpr std::array<double, 3> kShares = {0.47, 0.43, 0.40};
constexpr double kWidestPans = 240;
constexpr double kParagraphGap = 5;
constexpr int kAnswerLines = 3;
constexpr double kAnswerPitch = 22;

// Pictures and words side by side.
struct Spread {
  double width = 0;              // of the pictures
  bool has_pans_beside = false;  // below the words instead of below the board
  bool asks_beside = false;      // the questions stand below the words as well
  double height = 0;             // of the pictures, and of what must stay with them
};

// Does the board show nothing but the puzzle itself, which stands large on the first page?
bool is_bare_puzzle(const Figure& figure, const std::string& puzzle) {
  if (!figure.candidates.is_empty() || !figure.left_houses.empty() || !figure.right_houses.empty() || !figure.focus.is_empty()) return false;
  if (!figure.left.is_empty() || !figure.right.is_empty() || !figure.fresh.is_empty()) return false;
  const Position& position = figure.position;
  for (const Cell cell : position.shape().all_cells()) {
    const char sign = cell.index < puzzle.size() ? puzzle[cell.index] : '.';
    const bool is_empty = sign == '.' || sign == '0';
    const auto digit = position.digit_at(cell);
    if (is_empty == digit.has_value()) return false;
  }
  return true;
}

class Handout {
 public:
  Handout(const Document& document, const HandoutOptions& options, PageFlow& flow) : document_(document), options_(options), flow_(flow), speaker_(document.language) {}

  void write() {
    puzzle_page();
    flow_.new_page();
    if (options_.is_worksheet) {
      exercises_alone();
    } else {
      argument();
      answers();
    }
    flow_.end();
  }

  // Is there anything after the first page?
  static bool is_one_page(const Document& document, const HandoutOptions& options) { return options.is_worksheet && !has_exercises(document); }

  void write_first_page_only() {
    puzzle_page();
    flow_.end();
  }

 private:
  [[nodiscard]] std::string word(std::string_view key) const { return speaker_.words().say(key); }
  [[nodiscard]] std::string numbered(std::string_view key, int number) const { return speaker_.words().say(key, {{"n", number}}); }

  static bool has_exercises(const Document& document) {
    return std::any_of(document.scenes.begin(), document.scenes.end(), [](const Scene& scene) { return !scene.exercises.empty(); });
  }

  // "Level 3 - about 12 minutes", what it teaches and needs.
  void terms() {
    std::vector<std::string> parts;
    if (document_.level > 0) parts.push_back(numbered("page.level", document_.level));
    if (document_.minutes > 0) parts.push_back(numbered("page.minutes", document_.minutes));
    if (!document_.teaches.empty()) parts.push_back(word("page.teaches") + ": " + idea_names(speaker_, document_.teaches));
    if (!document_.needs.empty()) parts.push_back(word("page.needs") + ": " + idea_names(speaker_, document_.needs));
    if (parts.empty()) return;
    flow_.words(kAside, joined(parts, "   \xC2\xB7   "));
    flow_.skip(6);
  }

  void origin() {
    std::vector<std::string> parts;
    if (!document_.source.empty()) parts.push_back(word("page.source") + ": " + document_.source);
    if (!document_.licence.empty()) parts.push_back(word("page.licence") + ": " + document_.licence);
    if (!parts.empty()) flow_.words(kAside, joined(parts, "   \xC2\xB7   "));
  }

  [[nodiscard]] const Figure* puzzle_figure() const {
    for (const Scene& scene : document_.scenes) {
      if (scene.board && is_bare_puzzle(*scene.board, document_.puzzle)) return &*scene.board;
    }
    return document_.scenes.empty() || !document_.scenes.front().board ? nullptr : &*document_.scenes.front().board;
  }

  void puzzle_page() {
    flow_.heading("H1", document_.title, 21);
    terms();
    if (const Figure* figure = puzzle_figure()) {
      const std::string svg = board_text(*figure);
      const double width = std::min(flow_.width(), 425.0);
      flow_.picture_at(svg, alternative(figure->title, figure->description), flow_.left() + (flow_.width() - width) / 2, flow_.y(), width);
      flow_.skip(height_of(svg, width) + 4);
    }
    flow_.signs(kFixed, document_.puzzle);
    flow_.skip(6);
    origin();
    flow_.skip(8);
    const double pitch = 24;
    if (flow_.room() > 3 * pitch) {
      flow_.words(kAside, word("page.notes.room"));
      flow_.ruled_lines(static_cast<int>(flow_.room() / pitch), pitch);
    }
  }

  void argument() {
    const int top = flow_.heading("H1", word("page.argument"), 18);
    flow_.skip(4);
    for (std::size_t i = 0; i < document_.scenes.size(); ++i) {
      if (!is_only_solution(document_.scenes[i])) scene(document_.scenes[i], static_cast<int>(i) + 1, top);
    }
  }

  void scene(const Scene& scene, int number, int parent) {
    std::vector<Drawn> drawn;
    if (scene.board && !is_bare_puzzle(*scene.board, document_.puzzle)) drawn.push_back(drawn_board(*scene.board));
    if (scene.pans) drawn.push_back(drawn_pans(*scene.pans));
    const Spread spread = fitting_spread(drawn, scene.paragraphs, scene.table, &scene);
    flow_.heading("H2", to_text(number) + ". " + scene.heading, 13.5, parent);
    beside(drawn, spread, scene.paragraphs, scene.table, &scene);
    claims(scene);
    steps(scene);
    if (!spread.asks_beside) exercises(scene);
    flow_.skip(14);
  }

  [[nodiscard]] double height_in(const Lettering& lettering, double column, const std::string& text) { return WordsBlock(flow_.pdf().canvas(), flow_.tongue(), lettering, column, text).height(); }

  // The questions of a scene in a column, with a few lines each.
  [[nodiscard]] double asking_height(const Scene& scene, double column) {
    double height = 0;
    for (const Exercise& exercise : scene.exercises) height += 2 * kParagraphGap + height_in(kStrong, column, "Q") + height_in(kBody, column, exercise.question) + kAnswerLines * kAnswerPitch;
    return height;
  }

  // `scene`: whose claims and questions stay with the pictures, if any.
  [[nodiscard]] Spread spread_of(const std::vector<Drawn>& drawn, double share, const std::vector<Paragraph>& list, const std::optional<TallyTable>& table, const Scene* scene) {
    Spread spread;
    spread.width = flow_.width() * share;
    for (const Drawn& picture : drawn) spread.height += picture.height(spread.width);
    if (drawn.empty()) return spread;
    const double column = flow_.width() - spread.width - kGap;
    double words = table ? tally_height(*table) + kGap : 0;
    for (const Paragraph& paragraph : list) words += height_in(kBody, column, paragraph.text) + kParagraphGap;
    const double board = drawn.front().height(spread.width);
    const double pans = drawn.size() < 2 ? 0 : kGap + drawn.back().height(std::min(column, kWidestPans));
    if (drawn.size() == 2 && words + pans <= board) {
      spread.has_pans_beside = true;
      spread.height = board;
      words += pans;
    }
    if (scene == nullptr) return spread;
    spread.asks_beside = !scene->exercises.empty() && words + asking_height(*scene, column) <= board;
    if (!spread.asks_beside) spread.height += 110 * static_cast<double>(scene->exercises.size());
    if (!scene->claims.empty()) spread.height += 16 + 34 * static_cast<double>(scene->claims.size());
    return spread;
  }

  // Starts a new page when even the smallest pictures have no room here.
  Spread fitting_spread(const std::vector<Drawn>& drawn, const std::vector<Paragraph>& list, const std::optional<TallyTable>& table, const Scene* scene) {
    constexpr double kHeading = 34;
    for (const double share : kShares) {
      const Spread spread = spread_of(drawn, share, list, table, scene);
      if (spread.height + kHeading <= flow_.room()) return spread;
    }
    const Spread spread = spread_of(drawn, kShares.front(), list, table, scene);
    flow_.need(spread.height + kHeading);
    return spread;
  }

  void paragraphs(const std::vector<Paragraph>& list, std::size_t from) {
    for (std::size_t i = from; i < list.size(); ++i) {
      flow_.words(kBody, list[i].text, list[i].term);
      flow_.skip(kParagraphGap);
    }
  }

  // Pictures one below the other with the words and the tally beside them; words that do not fit there run on below, over
  // the whole width.
  void beside(const std::vector<Drawn>& drawn, const Spread& spread, const std::vector<Paragraph>& list, const std::optional<TallyTable>& table = {}, const Scene* scene = nullptr) {
    const double width = spread.width;
    if (drawn.empty()) {
      paragraphs(list, 0);
      if (table) flow_.skip(tally_at(*table, flow_.at_start(width), flow_.y(), width) + 8);
      return;
    }
    const double top = flow_.y();
    double bottom = top;
    for (const Drawn& picture : drawn) {
      if (spread.has_pans_beside && bottom > top) break;
      bottom += flow_.picture_at(picture.svg, picture.description, flow_.at_start(width), bottom, width);
    }
    const double column = flow_.width() - width - kGap;
    const double x = flow_.at_end(column);
    const double limit = bottom - (table ? tally_height(*table) + kGap : 0);
    double y = top;
    std::size_t done = 0;
    std::string rest;
    for (; done < list.size() && rest.empty(); ++done) {
      const WordsBlock block(flow_.pdf().canvas(), flow_.tongue(), kBody, column, list[done].text, list[done].term);
      const int fits = block.lines_within(0, limit - y);
      if (fits == block.line_count()) {
        y += flow_.words_at(kBody, x, y, column, list[done].text, list[done].term) + kParagraphGap;
        continue;
      }
      // A paragraph is parted only where two lines stand on either side.
      if (fits < 3 || block.line_count() - fits < 2) break;
      const std::size_t cut = block.start_of(fits);
      y += flow_.words_at(kBody, x, y, column, trimmed(std::string_view(list[done].text).substr(0, cut)), list[done].term);
      rest = std::string(trimmed(std::string_view(list[done].text).substr(cut)));
    }
    if (table) y += kGap / 2 + tally_at(*table, x, y + kGap / 2, column);
    if (spread.has_pans_beside) {
      const double pans = std::min(column, kWidestPans);
      y += kGap / 2;
      y += flow_.picture_at(drawn.back().svg, drawn.back().description, x + (column - pans) / 2, y, pans);
    }
    if (spread.asks_beside && scene != nullptr) y = ask_beside(*scene, x, y, column);
    flow_.move_to(std::max(y, bottom) + 8);
    if (!rest.empty()) {
      flow_.words(kBody, rest);
      flow_.skip(kParagraphGap);
    }
    paragraphs(list, done);
  }

  // ---- the tally, as a table -------------------------------------------------------------------------------------------

  struct TallyRow {
    std::string_view name;
    DigitCounts counts{};
    int sign = 1;
    bool is_total = false;
  };

  static std::vector<TallyRow> tally_rows(const TallyTable& table) {
    std::vector<TallyRow> rows = {{"tally.right.short", table.known_right}, {"tally.left.short", table.known_left, -1}};
    if (table.surplus != 0) {
      DigitCounts each{};
      for (int i = 0; i < table.side; ++i) each[static_cast<std::size_t>(i)] = table.surplus;
      rows.push_back({"tally.surplus", each});
    }
    rows.push_back({"tally.short", table.tally, 1, true});
    return rows;
  }

  static double tally_height(const TallyTable& table) { return kTallyLine * static_cast<double>(tally_rows(table).size() + 1); }

  double tally_at(const TallyTable& table, double x, double y, double width) {
    const std::vector<TallyRow> rows = tally_rows(table);
    const double name_width = std::min(72.0, width * 0.34);
    const double step = (width - name_width) / table.side;
    const bool is_mirrored = document_.is_right_to_left;
    const auto cell_x = [&](int digit) { return is_mirrored ? x + width - name_width - step * (digit + 1) : x + name_width + step * digit; };
    PdfFile& pdf = flow_.pdf();
    pdf.begin("Table");
    pdf.begin("TR");
    for (int i = 0; i < table.side; ++i) flow_.words_at(kTallyHead, cell_x(i), y, step, std::string(1, Shape::name_of(Digit(i))), {}, "TH");
    pdf.end("TR");
    double top = y;
    for (const TallyRow& row : rows) {
      top += kTallyLine;
      pdf.begin("TR");
      flow_.words_at(kTallyName, is_mirrored ? x + width - name_width : x, top, name_width, word(row.name), {}, "TH");
      for (int i = 0; i < table.side; ++i) {
        const int count = row.sign * row.counts[static_cast<std::size_t>(i)];
        const std::string entry = count > 0 ? "+" + to_text(count) : count < 0 ? "\xE2\x88\x92" + to_text(-count) : row.is_total ? "0" : "";
        flow_.words_at(row.is_total ? kTallyHead : kTallyEntry, cell_x(i), top, step, entry, {}, "TD");
      }
      pdf.end("TR");
    }
    pdf.end("Table");
    for (std::size_t i = 0; i < rows.size(); ++i) flow_.rule(x, y + kTallyLine * static_cast<double>(i + 1) - 1.5, width, rows[i].is_total ? 1.0 : 0.4);
    flow_.rule(x, top + kTallyLine - 1.5, width, 1.0);
    return tally_height(table) + 2;
  }

  void claims(const Scene& scene) {
    if (scene.claims.empty()) return;
    flow_.need(50);
    flow_.words(kAside, word("page.claims"));
    for (const AskedClaim& claim : scene.claims) {
      flow_.signs(kCode, claim.text);
      if (!claim.reason.empty()) flow_.words(kSmall, claim.reason);
      flow_.skip(3);
    }
  }

  void steps(const Scene& scene) {
    if (scene.steps.empty() || !scene.exercises.empty()) return;  // how an exercise came about is no help with it
    flow_.need(50);
    flow_.words(kAside, numbered("page.steps", static_cast<int>(scene.steps.size())));
    flow_.skip(2);
    for (std::size_t i = 0; i < scene.steps.size(); ++i) {
      flow_.words(kSmall, to_text(static_cast<int>(i) + 1) + ". " + scene.steps[i]);
      flow_.skip(1.5);
    }
    flow_.skip(4);
  }

  // Gives the place below.
  double ask_beside(const Scene& scene, double x, double y, double column) {
    for (const Exercise& exercise : scene.exercises) {
      y += 2 * kParagraphGap;
      y += flow_.words_at(kStrong, x, y, column, numbered("page.question.numbered", ++asked_));
      y += flow_.words_at(kBody, x, y, column, exercise.question);
      flow_.move_to(y);
      flow_.ruled_lines_at(x, column, kAnswerLines, kAnswerPitch);
      y = flow_.y();
    }
    return y;
  }

  void exercises(const Scene& scene) {
    for (const Exercise& exercise : scene.exercises) {
      flow_.need(110);
      flow_.skip(4);
      flow_.words(kStrong, numbered("page.question.numbered", ++asked_));
      flow_.words(kBody, exercise.question);
      if (!options_.is_worksheet) flow_.words(kAside, word("page.answer.at_end"));
      flow_.ruled_lines(options_.is_worksheet ? 5 : kAnswerLines, kAnswerPitch);
      flow_.skip(10);
    }
  }

  // The board with the questions beside it, and lines to write on as far down as the board reaches.
  void exercises_alone() {
    const int top = flow_.heading("H1", word("page.exercises"), 18);
    flow_.skip(4);
    for (const Scene& scene : document_.scenes) {
      if (scene.exercises.empty()) continue;
      if (!scene.board) {
        flow_.heading("H2", scene.heading, 13.5, top);
        exercises(scene);
        continue;
      }
      const Drawn board = drawn_board(*scene.board);
      const double width = flow_.width() * 0.5;
      const double column = flow_.width() - width - kGap;
      flow_.need(board.height(width) + 40);
      flow_.heading("H2", scene.heading, 13.5, top);
      const double start = flow_.y();
      const double bottom = start + flow_.picture_at(board.svg, board.description, flow_.at_start(width), start, width);
      double y = start;
      for (const Exercise& exercise : scene.exercises) {
        y += flow_.words_at(kStrong, flow_.at_end(column), y, column, numbered("page.question.numbered", ++asked_));
        y += flow_.words_at(kBody, flow_.at_end(column), y, column, exercise.question) + kParagraphGap;
      }
      constexpr double kPitch = 24;
      const int fitting = static_cast<int>((bottom - y) / kPitch);
      flow_.move_to(y);
      flow_.ruled_lines_at(flow_.at_end(column), column, std::max(fitting, 3), kPitch);
      flow_.move_to(std::max(bottom, flow_.y()) + 18);
    }
  }

  void answers() {
    int number = 0;
    int top = -1;
    for (const Scene& scene : document_.scenes) {
      for (const Exercise& exercise : scene.exercises) {
        if (number++ == 0) {
          flow_.new_page();
          top = flow_.heading("H1", word("page.answers"), 18);
        }
        answer(exercise, numbered("page.question.numbered", number) + " \xC2\xB7 " + scene.heading, top);
      }
    }
    for (std::size_t i = 0; i < document_.scenes.size(); ++i) {
      if (document_.scenes[i].answer) solution(document_.scenes[i], static_cast<int>(i) + 1);
    }
  }

  // A scene that shows nothing but the solution stands with it, on the last page.
  static bool is_only_solution(const Scene& scene) { return scene.answer && !scene.board && !scene.pans && scene.steps.empty() && scene.exercises.empty() && scene.claims.empty(); }

  void answer(const Exercise& exercise, const std::string& heading, int parent) {
    std::vector<Paragraph> list;
    for (const std::string& text : paragraphs_of(exercise.answer)) list.push_back({text, ""});
    std::vector<Drawn> drawn;
    if (exercise.answer_board) drawn.push_back(drawn_board(*exercise.answer_board));
    if (exercise.answer_pans) drawn.push_back(drawn_pans(*exercise.answer_pans));
    const Spread spread = fitting_spread(drawn, list, {}, nullptr);
    flow_.heading("H2", heading, 12, parent);
    beside(drawn, spread, list);
    if (!exercise.answer_note.empty()) flow_.words(kSmall, exercise.answer_note);
    flow_.skip(10);
  }

  static std::vector<std::string> paragraphs_of(const std::string& text) {
    std::vector<std::string> list;
    for (std::size_t at = 0; at < text.size();) {
      const auto end = std::min(text.find("\n\n", at), text.size());
      const std::string_view part = trimmed(std::string_view(text).substr(at, end - at));
      if (!part.empty()) list.emplace_back(part);
      at = end + 2;
    }
    return list;
  }

  void solution(const Scene& scene, int number) {
    const Figure& figure = *scene.answer;
    flow_.new_page();
    flow_.heading("H1", is_only_solution(scene) ? to_text(number) + ". " + scene.heading : word("page.solution"), 18);
    if (is_only_solution(scene)) paragraphs(scene.paragraphs, 0);
    const double width = std::min(flow_.width(), 340.0);
    flow_.skip(flow_.picture_at(board_text(figure), alternative(figure.title, figure.description), flow_.left() + (flow_.width() - width) / 2, flow_.y(), width));
  }

  const Document& document_;
  const HandoutOptions& options_;
  PageFlow& flow_;
  Speaker speaker_;
  int asked_ = 0;
};

struct Draft {
  std::string bytes;
  int pages = 0;
};

Result<Draft> drafted(const Document& document, const HandoutOptions& options, int pages) {
  PageLook look;
  if (options.paper == Paper::kLetter) {
    look.width = 612;
    look.height = 792;
  }
  look.tongue = {document.language, document.is_right_to_left};
  look.foot = document.title;
  look.pages = pages;
  const Speaker speaker(document.language);
  PdfFile pdf(look.width, look.height, {document.title, speaker.words().say(options.is_worksheet ? "page.worksheet" : "page.handout"), idea_names(speaker, document.teaches), document.language});
  PageFlow flow(pdf, look);
  Handout handout(document, options, flow);
  if (Handout::is_one_page(document, options)) {
    handout.write_first_page_only();
  } else {
    handout.write();
  }
  if (!flow.fault().empty()) return drawing_error("the handout", flow.fault());
  Result<std::string> bytes = pdf.finish();
  if (!bytes) return bytes.error();
  return Draft{std::move(bytes).value(), pdf.page() - 1};
}

}  // namespace

// Drawn twice: the foot of each page names the number of pages.
Result<std::string> handout_pdf(const Document& document, const HandoutOptions& options) {
  const Result<Draft> first = drafted(document, options, 0);
  if (!first) return first.error();
  Result<Draft> second = drafted(document, options, first->pages);
  if (!second) return second.error();
  return std::move(second.value().bytes);
}

}  // namespace cp
