// SPDX-License-Identifier: Apache-2.0
// Words and pictures from top to bottom over the pages of a PDF, with a line at the foot of each.
#pragma once

#include <string>
#include <string_view>

#include "print/pdf_file.h"
#include "print/words_block.h"

namespace cp {

struct PageLook {
  double width = 595.28;  // points; A4
  double height = 841.89;
  double side = 51;       // margins
  double top = 48;
  double bottom = 62;
  Tongue tongue;
  std::string foot;       // what stands at the foot beside the number of the page
  int pages = 0;          // how many there will be; 0: not known yet
};

class PageFlow {
 public:
  PageFlow(PdfFile& pdf, PageLook look) : pdf_(pdf), look_(std::move(look)), y_(look_.top) {}

  [[nodiscard]] double left() const { return look_.side; }
  [[nodiscard]] double width() const { return look_.width - 2 * look_.side; }
  [[nodiscard]] double y() const { return y_; }
  [[nodiscard]] double room() const { return look_.height - look_.bottom - y_; }
  [[nodiscard]] const Tongue& tongue() const { return look_.tongue; }
  [[nodiscard]] bool is_at_top() const { return y_ <= look_.top; }
  // The left edge of a piece that is `wide` and stands at the start of the lines, or at their end.
  [[nodiscard]] double at_start(double wide) const { return tongue().is_right_to_left ? left() + width() - wide : left(); }
  [[nodiscard]] double at_end(double wide) const { return tongue().is_right_to_left ? left() : left() + width() - wide; }

  void skip(double height) { y_ += height; }
  void move_to(double y) { y_ = y; }
  // A new page when less than so much room is left.
  void need(double height);
  void new_page();
  // Ends the last page.
  void end();

  // A heading ("H1", "H2") with a bookmark; gives its number.
  int heading(const char* tag, const std::string& words, double size, int parent = -1);
  // Words over the whole width; runs over to the next page when it must.
  void words(const Lettering& lettering, std::string_view text, std::string_view term = {}, const char* tag = "P");
  // Signs that are read from left to right in every language: puzzles, claims.
  void signs(const Lettering& lettering, std::string_view text);
  // Words in a column; nothing moves. Gives the height used.
  double words_at(const Lettering& lettering, double x, double y, double width, std::string_view text, std::string_view term = {}, const char* tag = "P");
  // An SVG; nothing moves. Gives the height used.
  double picture_at(const std::string& svg, const std::string& description, double x, double y, double width);
  // A thin line; part of no structure. Only between pieces.
  void rule(double x, double y, double width, double weight);
  // Ruled lines to write on, `count` of them.
  void ruled_lines(int count, double pitch) { ruled_lines_at(left(), width(), count, pitch); }
  // The same in a column.
  void ruled_lines_at(double x, double width, int count, double pitch);

  [[nodiscard]] const std::string& fault() const { return fault_; }
  PdfFile& pdf() { return pdf_; }

 private:
  void open_part();
  void close_part();
  void foot();

  PdfFile& pdf_;
  PageLook look_;
  double y_;
  bool has_part_ = false;
  std::string fault_;
};

}  // namespace cp
