// SPDX-License-Identifier: Apache-2.0
#include "print/pdf_file.h"

#include <cairo-pdf.h>

#include <utility>

#include "base/text.h"
#include "print/pdf_finish.h"

namespace cp {

namespace {

constexpr const char* kDate = "2000-01-01T00:00:00Z";  // fixed, so that the same lesson gives the same bytes

// In tenths of a point, so that no locale has a say in it.
std::string tenths(double number) {
  const auto whole = static_cast<long long>(number * 10 + 0.5);
  return to_text(whole / 10) + "." + to_text(whole % 10);
}

}  // namespace

PdfFile::PdfFile(double width, double height, const PdfTitle& title)
    : surface_(cairo_pdf_surface_create_for_stream(append_bytes, &bytes_, width, height)), canvas_(cairo_create(surface_.get())), title_(title) {
  const auto set = [this](cairo_pdf_metadata_t what, const std::string& text) {
    if (!text.empty()) cairo_pdf_surface_set_metadata(surface_.get(), what, text.c_str());
  };
  set(CAIRO_PDF_METADATA_TITLE, title.title);
  set(CAIRO_PDF_METADATA_SUBJECT, title.subject);
  set(CAIRO_PDF_METADATA_KEYWORDS, title.keywords);
  set(CAIRO_PDF_METADATA_CREATOR, "Counterpoise " CP_VERSION);
  set(CAIRO_PDF_METADATA_CREATE_DATE, kDate);
  set(CAIRO_PDF_METADATA_MOD_DATE, kDate);
}

PdfFile::~PdfFile() {
  canvas_.reset();
  surface_.reset();  // writes into bytes_, which goes later
}

void PdfFile::begin(const char* tag) { cairo_tag_begin(canvas_.get(), tag, ""); }

void PdfFile::end(const char* tag) { cairo_tag_end(canvas_.get(), tag); }

void PdfFile::begin_figure(std::string description) {
  descriptions_.push_back(std::move(description));
  begin("Figure");
}

int PdfFile::bookmark(const std::string& words, double x, double y, int parent) {
  const std::string place = "page=" + to_text(page_) + " pos=[" + tenths(x) + " " + tenths(y) + "]";
  return cairo_pdf_surface_add_outline(surface_.get(), parent < 0 ? CAIRO_PDF_OUTLINE_ROOT : parent, words.c_str(), place.c_str(), CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

void PdfFile::end_page() {
  cairo_show_page(canvas_.get());
  ++page_;
}

Result<std::string> PdfFile::finish() {
  std::string fault = fault_of(canvas_.get());
  cairo_surface_finish(surface_.get());
  const cairo_status_t status = cairo_surface_status(surface_.get());
  if (fault.empty() && status != CAIRO_STATUS_SUCCESS) fault = cairo_status_to_string(status);
  if (!fault.empty()) return drawing_error("the handout", fault);
  return finished_pdf(std::move(bytes_), title_.language, descriptions_);
}

}  // namespace cp
