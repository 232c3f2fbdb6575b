// SPDX-License-Identifier: Apache-2.0
// The words of a page lie in one piece of structure ("Sect"), which ends before the foot is drawn: what is repeated on every
// page is not read aloud.
#include "print/page_flow.h"

#include <algorithm>

#include "print/picture.h"
#include "speak/words.h"

namespace cp {

namespace {

constexpr double kFootSize = 8;

}  // namespace

void PageFlow::open_part() {
  if (has_part_) return;
  pdf_.begin("Sect");
  has_part_ = true;
}

void PageFlow::close_part() {
  if (!has_part_) return;
  pdf_.end("Sect");
  has_part_ = false;
}

void PageFlow::foot() {
  cairo_t* canvas = pdf_.canvas();
  const double y = look_.height - look_.bottom + 18;
  set_ink(canvas, kRuleLine);
  cairo_set_line_width(canvas, 0.6);
  cairo_move_to(canvas, left(), y - 4);
  cairo_rel_line_to(canvas, width(), 0);
  cairo_stroke(canvas);
  Lettering small{kFootSize, false, false, false, Align::kStart, 1.2, kDim};
  const std::string number = Words(tongue().language).say("page.page", {{"n", pdf_.page()}, {"count", look_.pages}});
  const double number_width = 90;
  const WordsBlock title(canvas, tongue(), small, width() - number_width - 10, look_.foot);
  title.draw(at_start(width() - number_width - 10), y, 0, std::min(1, title.line_count()));
  small.align = Align::kEnd;
  WordsBlock(canvas, tongue(), small, number_width, number).draw(at_end(number_width), y);
}

void PageFlow::new_page() {
  end();
  y_ = look_.top;
}

void PageFlow::end() {
  close_part();
  foot();
  pdf_.end_page();
}

void PageFlow::need(double height) {
  if (height > room() && !is_at_top()) new_page();
}

int PageFlow::heading(const char* tag, const std::string& words, double size, int parent) {
  const Lettering lettering{size, true, true, false, Align::kStart, 1.15, kInk};
  const WordsBlock block(pdf_.canvas(), tongue(), lettering, width(), words);
  need(block.height() + 3 * size);
  open_part();
  const int number = pdf_.bookmark(words, left(), y_, parent);
  pdf_.begin(tag);
  block.draw(left(), y_);
  pdf_.end(tag);
  y_ += block.height() + size * 0.35;
  return number;
}

void PageFlow::words(const Lettering& lettering, std::string_view text, std::string_view term, const char* tag) {
  const WordsBlock block(pdf_.canvas(), tongue(), lettering, width(), text, term);
  const int lines = block.line_count();
  for (int from = 0; from < lines;) {
    int count = block.lines_within(from, room());
    // No single line alone at the foot or at the head of a page.
    if (from + count < lines && count == 1 && !is_at_top()) count = 0;
    if (from + count == lines - 1 && count > 2) --count;
    if (count == 0 && !is_at_top()) {
      new_page();
      continue;
    }
    count = std::max(count, 1);
    open_part();
    pdf_.begin(tag);
    block.draw(left(), y_, from, from + count);
    pdf_.end(tag);
    y_ += block.height(from, from + count);
    from += count;
  }
}

void PageFlow::signs(const Lettering& lettering, std::string_view text) {
  const bool is_right_to_left = look_.tongue.is_right_to_left;
  look_.tongue.is_right_to_left = false;
  words(lettering, text);
  look_.tongue.is_right_to_left = is_right_to_left;
}

double PageFlow::words_at(const Lettering& lettering, double x, double y, double width, std::string_view text, std::string_view term, const char* tag) {
  const WordsBlock block(pdf_.canvas(), tongue(), lettering, width, text, term);
  open_part();
  pdf_.begin(tag);
  block.draw(x, y);
  pdf_.end(tag);
  return block.height();
}

double PageFlow::picture_at(const std::string& svg, const std::string& description, double x, double y, double width) {
  const Result<Picture> picture = Picture::from_svg(svg);
  if (!picture) {
    if (fault_.empty()) fault_ = picture.error().message;
    return 0;
  }
  open_part();
  pdf_.begin_figure(description);
  const std::string fault = picture->draw(pdf_.canvas(), x, y, width);
  pdf_.end("Figure");
  if (fault_.empty()) fault_ = fault;
  return picture->height_at(width);
}

void PageFlow::rule(double x, double y, double width, double weight) {
  cairo_t* canvas = pdf_.canvas();
  set_ink(canvas, kInk);
  cairo_set_line_width(canvas, weight);
  cairo_move_to(canvas, x, y);
  cairo_rel_line_to(canvas, width, 0);
  cairo_stroke(canvas);
}

void PageFlow::ruled_lines_at(double x, double width, int count, double pitch) {
  close_part();
  cairo_t* canvas = pdf_.canvas();
  set_ink(canvas, kRuleLine);
  cairo_set_line_width(canvas, 0.6);
  for (int i = 0; i < count; ++i) {
    y_ += pitch;
    cairo_move_to(canvas, x, y_);
    cairo_rel_line_to(canvas, width, 0);
  }
  cairo_stroke(canvas);
}

}  // namespace cp
