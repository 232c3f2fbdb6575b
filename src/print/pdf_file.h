// SPDX-License-Identifier: Apache-2.0
// A PDF while it is drawn: pages, structure (headings, paragraphs, figures with their description), bookmarks, title and
// language. The same calls give the same bytes: the date is fixed.
#pragma once

#include <string>
#include <vector>

#include "print/drawing.h"

namespace cp {

struct PdfTitle {
  std::string title;
  std::string subject;
  std::string keywords;
  std::string language = "en";
};

class PdfFile {
 public:
  PdfFile(double width, double height, const PdfTitle& title);
  ~PdfFile();
  PdfFile(const PdfFile&) = delete;
  PdfFile& operator=(const PdfFile&) = delete;

  [[nodiscard]] cairo_t* canvas() const { return canvas_.get(); }
  [[nodiscard]] int page() const { return page_; }

  // A piece of the structure ("H1", "P", "L", "LI", "Figure", "Sect"); pieces nest, and none may span two pages.
  void begin(const char* tag);
  void end(const char* tag);
  // A figure with the words that stand for it.
  void begin_figure(std::string description);

  // A bookmark to a place on this page, below `parent` (-1: on top). Gives its number.
  int bookmark(const std::string& words, double x, double y, int parent = -1);

  void end_page();

  // The bytes; nothing can be drawn after it.
  Result<std::string> finish();

 private:
  std::string bytes_;
  CairoSurface surface_;
  CairoContext canvas_;
  PdfTitle title_;
  std::vector<std::string> descriptions_;
  int page_ = 1;
};

}  // namespace cp
