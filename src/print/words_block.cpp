// SPDX-License-Identifier: Apache-2.0
#include "print/words_block.h"

namespace cp {

namespace {

PangoFont font_of(const Lettering& lettering) {
  PangoFont font(pango_font_description_new());
  pango_font_description_set_family(font.get(), lettering.is_mono    ? "DejaVu Sans Mono,monospace"
                                                : lettering.is_serif ? "DejaVu Serif,serif"
                                                                     : "DejaVu Sans,sans-serif");
  pango_font_description_set_absolute_size(font.get(), lettering.size * PANGO_SCALE);
  if (lettering.is_bold) pango_font_description_set_weight(font.get(), PANGO_WEIGHT_BOLD);
  return font;
}

PangoAlignment alignment_of(Align align, bool is_right_to_left) {
  if (align == Align::kMiddle) return PANGO_ALIGN_CENTER;
  return (align == Align::kStart) == is_right_to_left ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT;
}

// Optional ligatures are off: readers that search or speak a PDF stumble over them. Those a script needs stay.
PangoMarks marks_of(std::string_view text, std::string_view term) {
  PangoMarks marks(pango_attr_list_new());
  pango_attr_list_insert(marks.get(), pango_attr_font_features_new("liga 0, clig 0, dlig 0"));
  const auto at = term.empty() ? std::string_view::npos : text.find(term);
  if (at != std::string_view::npos) {
    PangoAttribute* bold = pango_attr_weight_new(PANGO_WEIGHT_BOLD);
    bold->start_index = static_cast<guint>(at);
    bold->end_index = static_cast<guint>(at + term.size());
    pango_attr_list_insert(marks.get(), bold);
  }
  return marks;
}

bool is_written_from_the_right(gunichar letter) {
  switch (g_unichar_get_script(letter)) {
    case G_UNICODE_SCRIPT_ARABIC:
    case G_UNICODE_SCRIPT_HEBREW:
    case G_UNICODE_SCRIPT_SYRIAC:
    case G_UNICODE_SCRIPT_THAANA:
    case G_UNICODE_SCRIPT_NKO:
    case G_UNICODE_SCRIPT_ADLAM: return true;
    default: return false;
  }
}

// Words in another script than the lesson's, as those the program says in English: read from the left, whatever is around them.
bool reads_from_the_left(std::string_view text) {
  bool has_letters = false;
  for (const char* at = text.data(); at < text.data() + text.size(); at = g_utf8_next_char(at)) {
    const gunichar letter = g_utf8_get_char(at);
    if (is_written_from_the_right(letter)) return false;
    has_letters = has_letters || g_unichar_isalpha(letter) != 0;
  }
  return has_letters;
}

}  // namespace

WordsBlock::WordsBlock(cairo_t* canvas, const Tongue& tongue, const Lettering& lettering, double width, std::string_view text, std::string_view term)
    : canvas_(canvas), layout_(pango_cairo_create_layout(canvas)), ink_(lettering.ink), width_(width) {
  PangoLayout* layout = layout_.get();
  PangoContext* context = pango_layout_get_context(layout);
  pango_context_set_language(context, pango_language_from_string(tongue.language.c_str()));
  pango_context_set_base_dir(context, tongue.is_right_to_left && !reads_from_the_left(text) ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);
  pango_context_set_round_glyph_positions(context, FALSE);
  pango_layout_context_changed(layout);
  pango_layout_set_auto_dir(layout, FALSE);
  pango_layout_set_font_description(layout, font_of(lettering).get());
  pango_layout_set_alignment(layout, alignment_of(lettering.align, tongue.is_right_to_left));
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width(layout, static_cast<int>(width * PANGO_SCALE));
  pango_layout_set_line_spacing(layout, static_cast<float>(lettering.leading));
  pango_layout_set_attributes(layout, marks_of(text, term).get());
  pango_layout_set_text(layout, text.data(), static_cast<int>(text.size()));
}

double WordsBlock::height(int from, int to) const {
  double sum = 0;
  for (int i = from; i < to; ++i) {
    PangoRectangle line;
    pango_layout_line_get_extents(pango_layout_get_line_readonly(layout_.get(), i), nullptr, &line);
    sum += static_cast<double>(line.height) / PANGO_SCALE;
  }
  return sum;
}

int WordsBlock::lines_within(int from, double height_left) const {
  int count = 0;
  while (from + count < line_count() && height(from, from + count + 1) <= height_left + 0.01) ++count;
  return count;
}

std::size_t WordsBlock::start_of(int from) const {
  return static_cast<std::size_t>(pango_layout_get_line_readonly(layout_.get(), from)->start_index);
}

void WordsBlock::draw(double x, double y, int from, int to) const {
  set_ink(canvas_, ink_);
  double top = y;
  for (int i = from; i < to; ++i) {
    PangoLayoutLine* line = pango_layout_get_line_readonly(layout_.get(), i);
    PangoRectangle place;
    pango_layout_line_get_extents(line, nullptr, &place);
    const double spare = width_ - static_cast<double>(place.width) / PANGO_SCALE;
    const PangoAlignment align = pango_layout_get_alignment(layout_.get());
    const double shift = align == PANGO_ALIGN_LEFT ? 0 : align == PANGO_ALIGN_CENTER ? spare / 2 : spare;
    cairo_move_to(canvas_, x + shift, top - static_cast<double>(place.y) / PANGO_SCALE);
    pango_cairo_show_layout_line(canvas_, line);
    top += static_cast<double>(place.height) / PANGO_SCALE;
  }
}

}  // namespace cp
