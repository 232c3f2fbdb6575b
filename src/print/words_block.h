// SPDX-License-Identifier: Apache-2.0
// A block of words on a canvas: shaped by pango in any script and direction, broken into lines, drawn line by line so that
// a block can run over to the next page.
#pragma once

#include <string>
#include <string_view>

#include "print/drawing.h"

namespace cp {

// What all words of a lesson have in common.
struct Tongue {
  std::string language = "en";
  bool is_right_to_left = false;
};

enum class Align { kStart, kMiddle, kEnd };  // start: left, or right where one writes from right to left

struct Lettering {
  double size = 10.5;       // of the font, in units of the canvas
  bool is_bold = false;
  bool is_serif = true;
  bool is_mono = false;
  Align align = Align::kStart;
  double leading = 1.25;    // distance of lines in font heights
  Ink ink = kInk;
};

class WordsBlock {
 public:
  // `term` is set bold where it first stands in the text.
  WordsBlock(cairo_t* canvas, const Tongue& tongue, const Lettering& lettering, double width, std::string_view text, std::string_view term = {});

  [[nodiscard]] int line_count() const { return pango_layout_get_line_count(layout_.get()); }
  // Of lines [from, to).
  [[nodiscard]] double height(int from, int to) const;
  [[nodiscard]] double height() const { return height(0, line_count()); }
  // How many lines, from `from` on, fit into so much height.
  [[nodiscard]] int lines_within(int from, double height) const;
  // Where line `from` starts in the text, in bytes.
  [[nodiscard]] std::size_t start_of(int from) const;

  void draw(double x, double y, int from, int to) const;
  void draw(double x, double y) const { draw(x, y, 0, line_count()); }

 private:
  cairo_t* canvas_;
  PangoText layout_;
  Ink ink_;
  double width_;
};

}  // namespace cp
