// SPDX-License-Identifier: Apache-2.0
// Owning handles for what cairo, pango and librsvg hand out, and the colours of paper.
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>
#include <string>

#include "base/result.h"

namespace cp {

template <auto release>
struct Releases {
  template <typename T>
  void operator()(T* thing) const {
    release(thing);
  }
};

using CairoSurface = std::unique_ptr<cairo_surface_t, Releases<cairo_surface_destroy>>;
using CairoContext = std::unique_ptr<cairo_t, Releases<cairo_destroy>>;
using PangoText = std::unique_ptr<PangoLayout, Releases<g_object_unref>>;
using PangoFont = std::unique_ptr<PangoFontDescription, Releases<pango_font_description_free>>;
using PangoMarks = std::unique_ptr<PangoAttrList, Releases<pango_attr_list_unref>>;

struct Ink {
  double red = 0;
  double green = 0;
  double blue = 0;
};

// The ledger of the pages (export/page_assets.cpp), for paper and stills.
inline constexpr Ink kInk{0.106, 0.106, 0.106};       // #1b1b1b
inline constexpr Ink kDim{0.357, 0.337, 0.298};       // #5b564c, 4.5 to 1 on kPaper and kGround
inline constexpr Ink kRuleLine{0.796, 0.749, 0.643};  // #cbbfa4
inline constexpr Ink kGround{0.965, 0.945, 0.902};      // #f6f1e6
inline constexpr Ink kPaper{1, 0.992, 0.973};         // #fffdf8

void set_ink(cairo_t* canvas, const Ink& ink);

struct Box {
  double x = 0;
  double y = 0;
  double width = 0;
  double height = 0;
};

// An error of the libraries: our fault unless memory ran out.
Error drawing_error(const std::string& what, const std::string& why);

// The error a canvas is in, if it is in one.
std::string fault_of(cairo_t* canvas);

// For cairo's writers: appends to the std::string behind `text`.
cairo_status_t append_bytes(void* text, const unsigned char* bytes, unsigned int count);

}  // namespace cp
